package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.Highlight;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.Quantity;
import thudbook.library.ShelfStore.Shelf;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.notebook.Stores;
import thudbook.pages.frame.ListAddress;
import thudbook.quantities.Fault;
import thudbook.wording.QuantityWords;

/**
 * The list of recipes, as it is shown.
 *
 * @param faults of the address that stand beside no field
 * @param total how many were found
 * @param count which recipes of how many
 * @param here the address of this page of the list
 * @param previous address of the page before; null: this is the first
 * @param next address of the page after; null: this is the last
 * @param shelves searches that have a name
 */
public record RecipeIndex(
    SearchAddress search,
    Typed typed,
    List<String> faults,
    List<ActiveFilter> active,
    FilterPanel filters,
    List<RecipeRow> rows,
    int total,
    String count,
    String here,
    @Nullable String previous,
    @Nullable String next,
    List<Shelf> shelves) {
  /** How many recipes stand on a page. */
  public static final int ROWS = 40;

  /** The address at which a session of the listed recipes is planned. */
  public String session() {
    return "/sessions/new?recipes="
        + rows.stream().map(RecipeRow::slug).collect(Collectors.joining(","));
  }

  /**
   * One entry of the menu of orders.
   *
   * @param key empty: the usual order
   */
  public record Order(String key, String words) {}

  /**
   * The list that was asked for.
   *
   * @param parameters of the address
   * @param author whose marks are shown
   */
  static RecipeIndex of(Stores stores, Map<String, List<String>> parameters, Author author) {
    Library library = stores.library();
    SearchAddress.Read asked = SearchAddress.read(parameters);
    SearchAddress search = asked.address();
    Typed typed = search.wanted(library::vocabulary);
    Wanted wanted = typed.wanted();
    String after = parameters.getOrDefault("after", List.of("")).get(0);
    Library.Page page = library.page(wanted, search.ordering(wanted), author, ROWS, after);
    Highlight highlight = new Highlight(wanted.words());
    FilterWords words = new FilterWords(library, stores.gates());
    String previous = page.found().previous();
    String next = page.found().next();
    return new RecipeIndex(
        search,
        typed,
        asked.faults().stream()
            .filter(fault -> !fault.place().matches(".*\\.(from|to)"))
            .map(Fault::message)
            .toList(),
        ActiveFilter.all(search, words),
        FilterPanel.of(library, asked, wanted, parameters, words, author),
        RecipeRow.all(page.rows(), highlight, stores),
        page.found().total(),
        count(page),
        ListAddress.of(search, after),
        previous == null ? null : ListAddress.of(search, previous),
        next == null ? null : ListAddress.of(search, next),
        stores.shelves().all());
  }

  /** The address of the same words without any filter. */
  public String withoutFilters() {
    return ListAddress.of(search.with(Wanted.ALL), "");
  }

  /** Whether nothing is asked at all. */
  public boolean isWhole() {
    return typed.wanted().isAll();
  }

  /** The orders that do not go by a number. */
  public List<Order> orders() {
    String usual = typed.wanted().words().isEmpty() ? "newest first" : "relevance";
    return List.of(
        new Order("", "Usual: " + usual),
        new Order(Ordering.RELEVANCE.key(), "Relevance"),
        new Order(Ordering.NEWEST.key(), "Newest first"),
        new Order(Ordering.TITLE.key(), "Title"),
        new Order(Ordering.LAST_USED.key(), "Last used"));
  }

  /** The orders by a number, the largest or the smallest first. */
  public List<Order> ordersByNumber(boolean descending) {
    List<Order> orders = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      orders.add(
          new Order(
              Ordering.of(quantity, descending).key(),
              QuantityWords.name(quantity)
                  + (descending ? ", largest first" : ", smallest first")));
    }
    return orders;
  }

  /** The order that the address asks for; empty: none. */
  public String order() {
    return search.order() == null ? "" : search.order().key();
  }

  private static String count(Library.Page page) {
    int total = page.found().total();
    if (total == 0) {
      return "No recipe";
    }
    String recipes = total == 1 ? "1 recipe" : total + " recipes";
    int offset = page.found().offset();
    return page.rows().size() == total
        ? recipes
        : (offset + 1) + " to " + (offset + page.rows().size()) + " of " + recipes;
  }
}
