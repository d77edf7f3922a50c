package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.library.Alike;
import thudbook.library.Likeness;
import thudbook.library.RecipeFacts;
import thudbook.library.RecipeList;
import thudbook.notebook.Stores;
import thudbook.recipes.Recipe;
import thudbook.wording.ReadableNumbers;
import thudbook.wording.SourceWords;

/**
 * The recipes that are most like one.
 *
 * @param compared whether the recipe can be compared in this way at all
 */
public record AlikeSheet(
    String slug, String title, Likeness by, boolean compared, List<Item> items) {
  /** How many are ranked. */
  static final int MOST = 20;

  /**
   * One of them.
   *
   * @param differences what differs, in words; empty: nothing that anybody would notice
   * @param distance with its unit
   * @param meaning of the distance
   */
  public record Item(RecipeRow row, String differences, String distance, String meaning) {}

  static AlikeSheet of(Kept<Recipe> stored, Likeness by, Stores stores, Author author) {
    Recipe recipe = stored.thing();
    OptionalInt key = stores.library().list().key(recipe.id());
    List<Alike.Neighbour> nearest =
        key.isEmpty() ? List.of() : stores.library().alike().nearest(key.getAsInt(), by, MOST);
    Map<Integer, RecipeList.Row> rows = new HashMap<>();
    List<Integer> keys = new ArrayList<>(nearest.stream().map(Alike.Neighbour::key).toList());
    key.ifPresent(keys::add);
    stores.library().list().rows(keys, author).forEach(row -> rows.put(row.key(), row));
    RecipeList.Row own = key.isEmpty() ? null : rows.get(key.getAsInt());
    List<RecipeList.Row> shown =
        nearest.stream()
            .map(neighbour -> rows.get(neighbour.key()))
            .filter(Objects::nonNull)
            .toList();
    List<String> slugs = shown.stream().map(RecipeList.Row::slug).toList();
    Map<String, Kept<Recipe>> others = stores.recipes().named(slugs);
    Map<String, RecipeRow> views = new HashMap<>();
    RecipeRow.all(shown, stores).forEach(row -> views.put(row.slug(), row));
    List<Item> items = new ArrayList<>();
    for (Alike.Neighbour neighbour : nearest) {
      RecipeList.Row row = rows.get(neighbour.key());
      if (row != null && own != null) {
        items.add(
            new Item(
                Objects.requireNonNull(views.get(row.slug())),
                String.join(", ", differences(recipe, own, row, by, others.get(row.slug()))),
                ReadableNumbers.decibels(neighbour.distance()),
                AlikeWords.distance(neighbour.distance())));
      }
    }
    boolean compared = own != null && (by == Likeness.SETTINGS || own.shape() != null);
    return new AlikeSheet(recipe.slug(), recipe.title(), by, compared, items);
  }

  private static List<String> differences(
      Recipe recipe,
      RecipeList.Row own,
      RecipeList.Row row,
      Likeness by,
      @Nullable Kept<Recipe> stored) {
    List<String> words = new ArrayList<>();
    if (by != Likeness.SETTINGS) {
      words.addAll(AlikeWords.heard(own.metrics(), row.metrics()));
    }
    Recipe other = stored == null ? null : stored.thing();
    if (by != Likeness.SHAPE && other != null) {
      if (!Objects.equals(own.sourceKind(), row.sourceKind())) {
        words.add(
            SourceWords.kind(row.sourceKind())
                + " instead of "
                + SourceWords.kind(own.sourceKind()));
      }
      words.addAll(
          AlikeWords.set(RecipeFacts.of(recipe).numbers(), RecipeFacts.of(other).numbers()));
      if (row.channels().stream().noneMatch(own.channels()::contains)
          && !row.channels().isEmpty()) {
        words.add("on " + String.join(", then ", row.channels()));
      }
    }
    return words;
  }
}
