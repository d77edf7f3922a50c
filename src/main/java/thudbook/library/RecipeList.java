package thudbook.library;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.predictions.Metrics;
import thudbook.predictions.SmallShape;

/** What the list shows of recipes that were found. */
public interface RecipeList {
  /**
   * Rows of recipes.
   *
   * @param keys as {@link Search} gives them
   * @param member whose favourites are told
   * @return in the order of the keys; one that does not exist is left out
   */
  List<Row> rows(List<Integer> keys, Author member);

  /** The ids of recipes, in the order of their keys; one that does not exist is left out. */
  List<UUID> ids(List<Integer> keys);

  /** The key of a recipe that is in no bin, if it exists. */
  OptionalInt key(UUID id);

  /**
   * One recipe of the list.
   *
   * @param key in the catalogue
   * @param channels gate and channel of each stage, in words
   * @param metrics null: no prediction yet
   * @param shape null: no prediction yet
   * @param stale whether the numbers are being recomputed
   * @param rating 1 to 5; null: none
   */
  record Row(
      int key,
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
      boolean stale,
      @Nullable Integer rating,
      boolean favourite) {
    public Row {
      tags = List.copyOf(tags);
      channels = List.copyOf(channels);
    }
  }
}
