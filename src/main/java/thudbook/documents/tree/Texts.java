package thudbook.documents.tree;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Rules for words: what may stand in them, and how they are written in YAML. */
public final class Texts {
  /** What some reader of YAML 1.1 or 1.2 takes for a truth or for nothing, in any case. */
  private static final Set<String> TAKEN =
      Set.of("y", "n", "yes", "no", "on", "off", "true", "false", "null");

  private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_SLUG = 80;

  private Texts() {}

  /** Whether a character may stand in a text of one line. */
  public static boolean visible(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> codePoint != 0xFEFF && !isNoncharacter(codePoint);
    };
  }

  /** Whether a character may stand in notes and in the text of a document. */
  public static boolean printable(int codePoint) {
    return codePoint == '\n'
        || codePoint == '\t'
        || !(Character.isISOControl(codePoint)
            || Character.getType(codePoint) == Character.SURROGATE
            || isNoncharacter(codePoint));
  }

  private static boolean isNoncharacter(int codePoint) {
    return (codePoint & 0xFFFE) == 0xFFFE || (codePoint >= 0xFDD0 && codePoint <= 0xFDEF);
  }

  /** Whether a text can be the slug of a document. */
  public static boolean isSlug(String text) {
    return text.length() <= LONGEST_SLUG && SLUG.matcher(text).matches();
  }

  /**
   * A text for YAML: plain if it begins with a letter, has only letters, digits, spaces and
   * hyphens, and no reader takes it for something else; otherwise in double quotes. Letters are
   * those of Latin: what else is a letter grows with Unicode, and canonical text must not change
   * with it.
   */
  static String yaml(String text) {
    return plain(text) ? text : '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  private static boolean plain(String text) {
    return !text.isEmpty()
        && isLatinLetter(text.codePointAt(0))
        && text.codePoints()
            .allMatch(c -> isLatinLetter(c) || (c >= '0' && c <= '9') || c == ' ' || c == '-')
        && !text.endsWith(" ")
        && !TAKEN.contains(text.toLowerCase(Locale.ROOT));
  }

  private static boolean isLatinLetter(int c) {
    return (c >= 'A' && c <= 'Z')
        || (c >= 'a' && c <= 'z')
        || (c >= 0xC0 && c <= 0x24F && c != '×' && c != '÷');
  }

  /** A tag as tags are compared: without case and accents. */
  public static String folded(String tag) {
    return Normalizer.normalize(tag, Normalizer.Form.NFKD)
        .replaceAll("\\p{M}+", "")
        .toLowerCase(Locale.ROOT);
  }
}
