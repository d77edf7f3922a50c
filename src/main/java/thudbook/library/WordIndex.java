package thudbook.library;

/** Where the words of recipes are looked up. */
public interface WordIndex {
  /** Where a word stands in a recipe, the most telling first. */
  enum Place {
    TITLE,
    HEARD,
    PEOPLE,
    GEAR,
    NOTES;

    /** What it tells about a recipe that a word stands here. */
    public Rank rank() {
      return switch (this) {
        case TITLE -> Rank.TITLE;
        case HEARD -> Rank.HEARD;
        case PEOPLE, GEAR, NOTES -> Rank.ELSEWHERE;
      };
    }
  }

  /** Places that the index tells apart. */
  enum Rank {
    TITLE,
    HEARD,
    ELSEWHERE
  }

  /** Takes what is found. */
  interface Hits {
    /** A recipe has the term at a place of this rank; keys come in rising order. */
    void add(Rank rank, int key);
  }

  /** Finds the recipes that have a term, also those in the bin: each once for every rank. */
  void find(Term term, Hits hits);
}
