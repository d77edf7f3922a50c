package thudbook.drawings;

/**
 * How wide a text will be, estimated from the widths of letters of common sans-serif fonts. The
 * server can't ask the reader's font; so the estimate is on the wide side, and labels are placed by
 * it.
 */
final class TextWidth {
  private TextWidth() {}

  /** The width of a text at a size, in user units. */
  static double of(String text, double size) {
    return text.codePoints().mapToDouble(TextWidth::em).sum() * size;
  }

  private static double em(int letter) {
    if (Character.isDigit(letter)) {
      return 0.64; // tabular figures
    }
    return switch (letter) {
      case 'i', 'j', 'l', 'I', '.', ',', ':', '\'', '|' -> 0.30;
      case ' ', '\u00a0', 'f', 't', 'r', '(', ')', '-' -> 0.40;
      case 'm', 'w', 'M', 'W', '%', '@' -> 0.98;
      case '−', '–', '+', '=' -> 0.66;
      default -> Character.isUpperCase(letter) ? 0.76 : 0.61;
    };
  }
}
