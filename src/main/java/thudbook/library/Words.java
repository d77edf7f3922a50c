package thudbook.library;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words of a text as they are compared: without case and accents. */
public final class Words {
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");

  /** Letters, digits and what people make their own signs of. Marks hang on the letter before. */
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}\\p{Co}\\p{M}]+");

  private Words() {}

  /** The text in compatibility decomposition, without marks, in lower case. */
  public static String fold(String text) {
    String decomposed = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return MARKS.matcher(decomposed).replaceAll("").toLowerCase(Locale.ROOT);
  }

  /** The words of a text, folded. */
  public static List<String> of(String text) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(fold(text));
    while (matcher.find()) {
      words.add(matcher.group());
    }
    return words;
  }

  /** Where the words of a text stand in it, unfolded. */
  static List<MatchResult> places(String text) {
    return WORD.matcher(text).results().toList();
  }
}
