package thudbook.documents;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;

/** Names for addresses, made of titles. */
public final class Slugs {
  private static final int LONGEST = 60;

  /** Behind these addresses new things are written. */
  private static final Set<String> KEPT = Set.of("new");

  private Slugs() {}

  /** Whether a slug is the address of a page of ours, so that nothing new may have it. */
  public static boolean isKept(String slug) {
    return KEPT.contains(slug);
  }

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
