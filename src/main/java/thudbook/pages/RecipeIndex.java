package thudbook.pages;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.SearchAddress;
import thudbook.library.Typed;
import thudbook.library.Wanted;
import thudbook.library.Words;

/**
 * The list of recipes, as it is shown.
 *
 * @param count which recipes of how many
 * @param previous address of the page before; null: this is the first
 * @param next address of the page after; null: this is the last
 */
public record RecipeIndex(
    SearchAddress search,
    Typed typed,
    List<RecipeRow> rows,
    String count,
    @Nullable String previous,
    @Nullable String next) {
  /** How many recipes stand on a page. */
  static final int ROWS = 40;

  /** The address at which a session of the listed recipes is planned. */
  public String session() {
    return "/sessions/new?recipes="
        + rows.stream().map(RecipeRow::slug).collect(Collectors.joining(","));
  }

  /**
   * The list that was asked for.
   *
   * @param missing what keeps the recipe of a slug from being predicted
   */
  static RecipeIndex of(
      Library library,
      SearchAddress.Read asked,
      @Nullable String after,
      Function<String, List<String>> missing) {
    SearchAddress search = asked.address();
    Typed typed = search.wanted(library::vocabulary);
    Wanted wanted = typed.wanted();
    Library.Page page = library.page(wanted, search.ordering(wanted), Author.OWNER, ROWS, after);
    List<RecipeRow> rows =
        page.rows().stream()
            .map(
                row ->
                    RecipeRow.of(
                        row,
                        row.metrics() == null && !row.stale()
                            ? missing.apply(row.slug())
                            : List.of()))
            .toList();
    String previous = page.found().previous();
    String next = page.found().next();
    return new RecipeIndex(
        search,
        typed,
        rows,
        count(page),
        previous == null ? null : address(search, previous),
        next == null ? null : address(search, next));
  }

  /** The address of the list of a tag, newest first. */
  public static String addressOfTag(String tag) {
    return address(
        SearchAddress.ALL.with(Wanted.ALL.choosing(thudbook.library.Facet.TAG, Words.fold(tag))),
        "");
  }

  /** The address of a search in an order. */
  public String inOrder(@Nullable Ordering order) {
    return address(search.in(order), "");
  }

  static String address(SearchAddress search, String after) {
    String query = search.query();
    if (!after.isEmpty()) {
      query += (query.isEmpty() ? "" : "&") + "after=" + after;
    }
    return query.isEmpty() ? "/" : "/?" + query;
  }

  private static String count(Library.Page page) {
    int total = page.found().total();
    if (total == 0) {
      return "";
    }
    String recipes = total == 1 ? "1 recipe" : total + " recipes";
    int offset = page.found().offset();
    return page.rows().size() == total
        ? recipes
        : (offset + 1) + " to " + (offset + page.rows().size()) + " of " + recipes;
  }
}
