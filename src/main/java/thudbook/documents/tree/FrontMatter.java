package thudbook.documents.tree;

import thudbook.quantities.Refusal;

/**
 * A document in its two parts.
 *
 * @param yaml between the lines of hyphens; it begins in line 2
 * @param notes behind them, in CommonMark
 * @param notesLine the line in which they begin
 */
public record FrontMatter(String yaml, String notes, int notesLine) {
  /** The line of hyphens around the front matter. */
  public static final String FENCE = "---";

  /** The line in which the front matter begins. */
  public static final int FIRST_LINE = 2;

  /**
   * Splits a document.
   *
   * @throws Refusal if it is not UTF-8, too long, or has no front matter
   */
  public static FrontMatter of(byte[] bytes) {
    String text = Utf8.decode(bytes).replace("\r\n", "\n").replace('\r', '\n');
    refuseUnprintable(text);
    int first = text.indexOf('\n');
    if (first < 0 || !isFence(text.substring(0, first))) {
      throw refusal(1, "a document begins with a line of three hyphens: ---");
    }
    int start = first + 1;
    int lines = 1;
    for (int at = start; at < text.length(); ) {
      int end = text.indexOf('\n', at) < 0 ? text.length() : text.indexOf('\n', at);
      lines++;
      if (isFence(text.substring(at, end))) {
        return new FrontMatter(
            text.substring(start, at), text.substring(Math.min(end + 1, text.length())), lines + 1);
      }
      at = end + 1;
    }
    throw refusal(lines, "the front matter does not end: a line of three hyphens is missing");
  }

  private static boolean isFence(String line) {
    return line.stripTrailing().equals(FENCE);
  }

  private static void refuseUnprintable(String text) {
    int line = 1;
    for (int i = 0; i < text.length(); ) {
      int codePoint = text.codePointAt(i);
      if (codePoint == '\n') {
        line++;
      } else if (!Texts.printable(codePoint)) {
        throw refusal(line, String.format("the character U+%04X may not stand here", codePoint));
      }
      i += Character.charCount(codePoint);
    }
  }

  private static Refusal refusal(int line, String sentence) {
    Faults faults = new Faults();
    faults.say(new Place(line, ""), "not-a-document", "", "a document", sentence);
    return faults.refusal(Refusal.Kind.MALFORMED);
  }
}
