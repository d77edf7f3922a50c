package thudbook.storage;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** Text as it is compared: without case and accents. */
final class Folding {
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");

  private Folding() {}

  /** The text in compatibility decomposition, without marks, in lower case. */
  static String fold(String text) {
    String decomposed = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return MARKS.matcher(decomposed).replaceAll("").toLowerCase(Locale.ROOT);
  }
}
