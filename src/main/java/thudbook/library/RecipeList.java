package thudbook.library;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metrics;
import thudbook.predictions.SmallShape;
import thudbook.quantities.Check;

/** The list of recipes, page by page. */
public interface RecipeList {
  /**
   * One page.
   *
   * @throws thudbook.quantities.Refusal if the cursor is not one of this list
   */
  Page page(Request request);

  /** Tags in use with the number of recipes, by name. */
  List<TagCount> tags();

  /** How rows are ordered. */
  enum Order {
    NEWEST,
    TITLE
  }

  /**
   * What is asked for.
   *
   * @param tag only recipes with this tag; null: all
   * @param limit 1 to 200
   * @param after the cursor of the wanted page; null or empty: the first page
   */
  record Request(Order order, @Nullable String tag, int limit, @Nullable String after) {
    public Request {
      Check.inRange("limit", limit, 1, 200);
    }
  }

  /**
   * A page of rows.
   *
   * @param total number of recipes over all pages
   * @param offset number of recipes before this page
   * @param previous cursor of the page before this one, empty where that is the first page; null:
   *     this is the first
   * @param next cursor of the page after this one; null: this is the last
   */
  record Page(
      List<Row> rows, long total, long offset, @Nullable String previous, @Nullable String next) {
    public Page {
      rows = List.copyOf(rows);
    }
  }

  /** A tag and how many recipes have it. */
  record TagCount(String name, long recipes) {}

  /**
   * One recipe of the list.
   *
   * @param channels gate and channel of each stage, in words
   * @param metrics null: no prediction yet
   * @param shape null: no prediction yet
   * @param stale whether the numbers are being recomputed
   */
  record Row(
      UUID id,
      String slug,
      String title,
      List<String> tags,
      @Nullable String by,
      @Nullable String heard,
      Instant changedAt,
      @Nullable String sourceKind,
      List<String> channels,
      @Nullable Metrics metrics,
      @Nullable SmallShape shape,
      boolean stale) {
    public Row {
      tags = List.copyOf(tags);
      channels = List.copyOf(channels);
    }
  }
}
