package thudbook.library;

import java.util.Set;
import java.util.function.IntConsumer;

/** Where the words of recipes are looked up. */
public interface WordIndex {
  /** Where a word stands in a recipe, the most telling first. */
  enum Place {
    TITLE,
    HEARD,
    PEOPLE,
    GEAR,
    NOTES
  }

  /**
   * The keys of the recipes that have a term in one of some places, in rising order, also of those
   * in the bin.
   */
  void find(Term term, Set<Place> places, IntConsumer keys);
}
