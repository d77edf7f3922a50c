package thudbook.library;

import java.util.List;
import org.roaringbitmap.BatchIterator;
import org.roaringbitmap.RoaringBitmap;

/**
 * How well recipes fit the words of a search: for each term 8 if it is in the title, 4 if in a tag,
 * 2 if in the line by ear, 1 if only elsewhere; the sum over all terms.
 */
final class Relevance {
  private static final int TITLE = 8;
  private static final int TAG = 4;
  private static final int HEARD = 2;
  private static final int BATCH = 256;

  /** What is counted beyond the 1 that every term gives. */
  private final short[] beyond;

  private final int terms;

  /** Where a term is found. */
  record Places(RoaringBitmap title, RoaringBitmap tags, RoaringBitmap heard) {}

  /** The relevance of recipes that have all terms. */
  Relevance(List<Places> terms, RoaringBitmap among) {
    this.terms = terms.size();
    this.beyond = new short[terms.isEmpty() || among.isEmpty() ? 0 : among.last() + 1];
    for (Places places : terms) {
      RoaringBitmap tags = RoaringBitmap.andNot(places.tags(), places.title());
      RoaringBitmap heard = RoaringBitmap.andNot(places.heard(), places.title());
      heard.andNot(places.tags());
      add(TITLE - 1, RoaringBitmap.and(places.title(), among));
      tags.and(among);
      add(TAG - 1, tags);
      heard.and(among);
      add(HEARD - 1, heard);
    }
  }

  private void add(int weight, RoaringBitmap recipes) {
    int[] batch = new int[BATCH];
    BatchIterator keys = recipes.getBatchIterator();
    while (keys.hasNext()) {
      int size = keys.nextBatch(batch);
      for (int i = 0; i < size; i++) {
        beyond[batch[i]] += (short) weight;
      }
    }
  }

  /** How well a recipe fits. */
  int of(int key) {
    return terms == 0 ? 0 : terms + beyond[key];
  }
}
