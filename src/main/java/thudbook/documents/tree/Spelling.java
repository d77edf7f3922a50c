package thudbook.documents.tree;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds what a misspelt word may have been. */
final class Spelling {
  private static final int LONGEST = 40;

  private Spelling() {}

  /** The word nearest to another, if they differ in at most a third of its letters. */
  static @Nullable String nearest(String word, Iterable<String> known) {
    String nearest = null;
    int least = Integer.MAX_VALUE;
    if (word.length() <= LONGEST) {
      for (String candidate : known) {
        int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
        if (distance < least && distance <= Math.max(1, candidate.length() / 3)) {
          nearest = candidate;
          least = distance;
        }
      }
    }
    return nearest;
  }

  /** Insertions, deletions, substitutions and swaps of neighbours that turn one into the other. */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
