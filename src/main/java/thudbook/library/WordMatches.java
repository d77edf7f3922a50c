package thudbook.library;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.roaringbitmap.RoaringBitmap;

/** Where the words of one search were found. Tags are looked up in the catalogue. */
record WordMatches(List<Match> words, List<Match> without) {
  /** A term and the recipes that have it. */
  record Match(Term term, WordHits hits) {}

  /** The recipes with all words and none that is excluded; null: no words are asked. */
  @Nullable RoaringBitmap recipes(Catalogue catalogue) {
    if (words.isEmpty() && without.isEmpty()) {
      return null;
    }
    RoaringBitmap left = catalogue.standing().clone();
    for (Match match : words) {
      left.and(RoaringBitmap.or(match.hits().anywhere(), tagged(catalogue, match.term())));
    }
    for (Match match : without) {
      left.andNot(match.hits().anywhere());
      left.andNot(tagged(catalogue, match.term()));
    }
    return left;
  }

  /** How well recipes that have all words fit. */
  Relevance relevance(Catalogue catalogue, RoaringBitmap among) {
    List<Relevance.Places> places =
        words.stream()
            .map(
                match ->
                    new Relevance.Places(
                        match.hits().title(),
                        tagged(catalogue, match.term()),
                        match.hits().heard()))
            .toList();
    return new Relevance(places, among);
  }

  private static RoaringBitmap tagged(Catalogue catalogue, Term term) {
    RoaringBitmap tagged = new RoaringBitmap();
    catalogue
        .groups(Facet.TAG)
        .values()
        .forEach(
            group -> {
              if (term.isIn(group.words())) {
                tagged.or(group.recipes());
              }
            });
    return tagged;
  }
}
