package thudbook.documents;

import java.text.Normalizer;
import java.util.Locale;

/** Names for addresses, made of titles. */
public final class Slugs {
  private static final int LONGEST = 60;

  private Slugs() {}

  /**
   * The slug of a title: accents taken off (Unicode decomposition), lower case, everything but
   * ASCII letters and digits turned into single hyphens, at most 60 characters. A title without any
   * gives {@code untitled}.
   */
  public static String of(String title) {
    String letters =
        Normalizer.normalize(title, Normalizer.Form.NFKD)
            .replace("ß", "ss")
            .replaceAll("\\p{M}+", "")
            .replaceAll("['\u2019]", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-");
    String slug = letters.substring(0, Math.min(letters.length(), LONGEST));
    slug = slug.replaceAll("^-|-$", "");
    return slug.isEmpty() ? "untitled" : slug;
  }
}
