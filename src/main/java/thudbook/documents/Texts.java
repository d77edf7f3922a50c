package thudbook.documents;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Rules for words: what may stand in them, and how they are written in YAML. */
final class Texts {
  /** What some reader of YAML 1.1 or 1.2 takes for a truth or for nothing, in any case. */
  private static final Set<String> TAKEN =
      Set.of("y", "n", "yes", "no", "on", "off", "true", "false", "null");

  private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_SLUG = 80;

  private Texts() {}

  /** Whether a character may stand in a text of one line. */
  static boolean visible(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.SURROGATE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> codePoint != 0xFEFF;
    };
  }

  /** Whether a character may stand in notes and in the text of a document. */
  static boolean printable(int codePoint) {
    return codePoint == '\n'
        || codePoint == '\t'
        || !(Character.isISOControl(codePoint)
            || Character.getType(codePoint) == Character.SURROGATE
            || (codePoint & 0xFFFE) == 0xFFFE);
  }

  /** Whether a text can be the slug of a document. */
  static boolean isSlug(String text) {
    return text.length() <= LONGEST_SLUG && SLUG.matcher(text).matches();
  }

  /**
   * A text for YAML: plain if it begins with a letter, has only letters, digits, spaces and
   * hyphens, and no reader takes it for something else; otherwise in double quotes.
   */
  static String yaml(String text) {
    return plain(text) ? text : '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  private static boolean plain(String text) {
    return !text.isEmpty()
        && Character.isLetter(text.codePointAt(0))
        && text.codePoints().allMatch(c -> Character.isLetterOrDigit(c) || c == ' ' || c == '-')
        && !text.endsWith(" ")
        && !TAKEN.contains(text.toLowerCase(Locale.ROOT));
  }
}
