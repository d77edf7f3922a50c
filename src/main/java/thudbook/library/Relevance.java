package thudbook.library;

import java.util.List;
import org.roaringbitmap.RoaringBitmap;

/**
 * How well recipes fit the words of a search: for each term 8 if it is in the title, 4 if in a tag,
 * 2 if in the line by ear, 1 if only elsewhere; the sum over all terms.
 */
final class Relevance {
  /** Where a term is found. */
  record Places(RoaringBitmap title, RoaringBitmap tags, RoaringBitmap heard) {
    int of(int key) {
      if (title.contains(key)) {
        return 8;
      }
      if (tags.contains(key)) {
        return 4;
      }
      return heard.contains(key) ? 2 : 1;
    }
  }

  private final List<Places> terms;

  Relevance(List<Places> terms) {
    this.terms = List.copyOf(terms);
  }

  /** How well a recipe fits that has all terms. */
  int of(int key) {
    int sum = 0;
    for (Places places : terms) {
      sum += places.of(key);
    }
    return sum;
  }
}
