package thudbook.pages;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.library.RecipeList;
import thudbook.library.RecipeList.Order;

/**
 * The list of recipes, as it is shown.
 *
 * @param tag only recipes with this tag; null: all
 * @param count which recipes of how many
 * @param previous address of the page before; null: this is the first
 * @param next address of the page after; null: this is the last
 */
public record RecipeIndex(
    List<RecipeRow> rows,
    Order order,
    @Nullable String tag,
    String count,
    @Nullable String previous,
    @Nullable String next,
    List<TagLink> tags) {
  /** How many recipes stand on a page. */
  static final int ROWS = 40;

  /** A tag with its address and how many recipes have it. */
  public record TagLink(String name, String address, long recipes, boolean current) {}

  /**
   * The list that was asked for.
   *
   * @param missing what keeps the recipe of a slug from being predicted
   */
  static RecipeIndex of(
      RecipeList list, RecipeList.Request request, Function<String, List<String>> missing) {
    RecipeList.Page page = list.page(request);
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
    Order order = request.order();
    String tag = request.tag();
    return new RecipeIndex(
        rows,
        order,
        tag,
        count(page),
        page.previous() == null ? null : address(order, tag, page.previous()),
        page.next() == null ? null : address(order, tag, page.next()),
        list.tags().stream()
            .map(
                t ->
                    new TagLink(
                        t.name(), address(order, t.name(), ""), t.recipes(), t.name().equals(tag)))
            .toList());
  }

  /** What the page is called. */
  public String title() {
    return tag == null ? "Recipes" : "Recipes: " + tag;
  }

  /** The address of the first page in an order, with the same tag. */
  public String inOrder(Order other) {
    return address(other, tag, "");
  }

  /** The address of the list of a tag, newest first. */
  public static String addressOfTag(String tag) {
    return address(Order.NEWEST, tag, "");
  }

  /** The address of the list with a tag, in the same order. */
  public String withTag(String other) {
    return address(order, other, "");
  }

  /** The address of the list of all tags, in the same order. */
  public String ofAllTags() {
    return address(order, null, "");
  }

  /** Whether the list is in an order. */
  public boolean isIn(Order other) {
    return order == other;
  }

  static String address(Order order, @Nullable String tag, String after) {
    StringBuilder address = new StringBuilder("/");
    char separator = '?';
    if (order != Order.NEWEST) {
      address.append(separator).append("order=").append(order.name().toLowerCase(Locale.ROOT));
      separator = '&';
    }
    if (tag != null) {
      address.append(separator).append("tag=").append(encoded(tag));
      separator = '&';
    }
    if (!after.isEmpty()) {
      address.append(separator).append("after=").append(encoded(after));
    }
    return address.toString();
  }

  private static String encoded(String value) {
    return URLEncoder.encode(value, StandardCharsets.UTF_8);
  }

  private static String count(RecipeList.Page page) {
    if (page.total() == 0) {
      return "";
    }
    String recipes = page.total() == 1 ? "1 recipe" : page.total() + " recipes";
    return page.rows().size() == page.total()
        ? recipes
        : (page.offset() + 1) + " to " + (page.offset() + page.rows().size()) + " of " + recipes;
  }
}
