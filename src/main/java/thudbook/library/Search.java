package thudbook.library;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.roaringbitmap.RoaringBitmap;
import thudbook.access.Author;
import thudbook.quantities.Check;

/** Finds recipes: words by the index, everything else by the catalogue. */
public final class Search {
  private final Catalogue catalogue;
  private final WordIndex index;
  private final RecentWords recent;

  /** A search over a catalogue and the index of the same recipes. */
  public Search(Catalogue catalogue, WordIndex index) {
    this.catalogue = catalogue;
    this.index = index;
    this.recent = new RecentWords(catalogue);
  }

  /**
   * One page of the recipes that are wanted.
   *
   * @param member who asks; favourites are his or hers
   * @param limit 1 to 200
   * @param after the cursor of the wanted page; null or empty: the first page
   * @throws thudbook.quantities.Refusal if the cursor is not one of this search
   */
  public Found find(
      Wanted wanted, Ordering ordering, Author member, int limit, @Nullable String after) {
    Check.inRange("limit", limit, 1, 200);
    byte[] mark = Position.mark(wanted, ordering);
    Position begin = after == null || after.isEmpty() ? null : Position.read(after, mark);
    WordMatches matches = matches(wanted);
    return catalogue.read(
        () -> {
          RoaringBitmap all = selection(wanted, member, matches).all();
          Ranking ranking =
              ordering.by() == Ordering.By.RELEVANCE
                  ? Ranking.byRelevance(catalogue, matches.relevance(catalogue, all))
                  : new Ranking(catalogue, ordering);
          Ranking.Page page = ranking.after(all, begin, limit);
          String previous = null;
          if (begin != null && page.before() > 0) {
            Position before = ranking.pageEndingAt(all, begin, limit);
            previous = before == null ? "" : before.text(mark);
          }
          List<Position> rows = page.rows();
          return new Found(
              rows.stream().map(Position::key).toList(),
              all.getCardinality(),
              page.before(),
              previous,
              page.more() ? rows.get(rows.size() - 1).text(mark) : null);
        });
  }

  /** The keys of all recipes that are wanted, in rising order. */
  public List<Integer> all(Wanted wanted, Author member) {
    WordMatches matches = matches(wanted);
    return catalogue.read(() -> selection(wanted, member, matches).all().stream().boxed().toList());
  }

  /**
   * What would remain if something more were asked.
   *
   * @param quantities those of which a histogram is wanted
   */
  public Counts counts(Wanted wanted, Author member, Collection<Quantity> quantities) {
    WordMatches matches = matches(wanted);
    return catalogue.read(
        () ->
            new Counting(catalogue, selection(wanted, member, matches), member.name())
                .counts(quantities));
  }

  private Selection selection(Wanted wanted, Author member, WordMatches matches) {
    return new Selection(catalogue, wanted, member.name(), matches.recipes(catalogue));
  }

  private WordMatches matches(Wanted wanted) {
    return new WordMatches(
        wanted.words().stream().map(this::match).toList(),
        wanted.without().stream().map(this::match).toList());
  }

  private WordMatches.Match match(Term term) {
    return new WordMatches.Match(term, recent.get(term, () -> WordHits.of(index, term)));
  }
}
