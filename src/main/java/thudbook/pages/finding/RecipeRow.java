package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.library.Highlight;
import thudbook.library.Highlight.Piece;
import thudbook.library.RecipeList;
import thudbook.notebook.Stores;
import thudbook.plots.SmallShapeDrawing;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;
import thudbook.recipes.KnownGates;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.StageEntry;
import thudbook.wording.Entry;
import thudbook.wording.MetricWords;
import thudbook.wording.ReachWords;
import thudbook.wording.Reading;
import thudbook.wording.SourceWords;

/**
 * One recipe of the list, as it is shown.
 *
 * @param title with the words that were looked for marked
 * @param tags likewise
 * @param heard likewise; empty: nothing was noted
 * @param extract why it was found, where nothing else in the row says so
 * @param rating 1 to 5 in words; empty: none
 * @param playedBy source and channels in words
 * @param drawing safe SVG; null: no prediction yet, or silent
 * @param numbers the key numbers; empty: no prediction yet
 * @param stale whether the numbers are being recomputed
 * @param missing what keeps it from being predicted; empty where it is predicted or about to be
 */
public record RecipeRow(
    String slug,
    String name,
    List<Piece> title,
    List<Tag> tags,
    List<Piece> heard,
    Optional<Highlight.Extract> extract,
    String rating,
    boolean favourite,
    String playedBy,
    @Nullable String drawing,
    List<Entry> numbers,
    boolean stale,
    List<String> missing) {
  private static final List<Metric> KEY_NUMBERS =
      List.of(Metric.HOLD, Metric.RELEASE_40, Metric.PEAK_DB, Metric.THUMP_PEAK);

  private static final int LONGEST_EXTRACT = 160;

  /** A tag, with the words that were looked for marked. */
  public record Tag(String name, List<Piece> pieces) {}

  /** The rows of a list of no search. */
  static List<RecipeRow> all(List<RecipeList.Row> rows, Stores stores) {
    return all(rows, new Highlight(List.of()), stores);
  }

  /**
   * The rows of a page of the list. The texts that some of them need, and their gates, are looked
   * up for all of them at once.
   *
   * @param highlight marks what was looked for
   */
  static List<RecipeRow> all(List<RecipeList.Row> rows, Highlight highlight, Stores stores) {
    List<String> read =
        rows.stream()
            .filter(row -> isHalfWritten(row) || !highlight.isSeenIn(shown(row)))
            .map(RecipeList.Row::slug)
            .toList();
    Map<String, Kept<Recipe>> recipes = stores.recipes().named(read);
    Set<String> played =
        recipes.values().stream()
            .flatMap(recipe -> recipe.thing().stages().stream())
            .map(StageEntry::gate)
            .filter(Objects::nonNull)
            .collect(Collectors.toSet());
    Things<Gate> gates = KnownGates.named(stores.gates(), played);
    return rows.stream().map(row -> of(row, highlight, recipes.get(row.slug()), gates)).toList();
  }

  private static boolean isHalfWritten(RecipeList.Row row) {
    return row.metrics() == null && !row.stale();
  }

  /** The words that stand in a row. */
  private static List<String> shown(RecipeList.Row row) {
    List<String> shown = new ArrayList<>(row.tags());
    shown.add(row.title());
    if (row.heard() != null) {
      shown.add(row.heard());
    }
    shown.addAll(row.channels());
    return shown;
  }

  /**
   * The row of a recipe.
   *
   * @param stored null: the row says all there is to say, or the recipe is gone since
   */
  private static RecipeRow of(
      RecipeList.Row row, Highlight highlight, @Nullable Kept<Recipe> stored, Things<Gate> gates) {
    List<String> shown = shown(row);
    boolean explained = highlight.isSeenIn(shown);
    Recipe recipe = stored == null ? null : stored.thing();
    Metrics metrics = row.metrics();
    List<Entry> numbers = metrics == null ? List.of() : numbers(metrics);
    return new RecipeRow(
        row.slug(),
        row.title(),
        highlight.pieces(row.title()),
        row.tags().stream().map(tag -> new Tag(tag, highlight.pieces(tag))).toList(),
        row.heard() == null ? List.of() : highlight.pieces(row.heard()),
        recipe == null || explained
            ? Optional.empty()
            : highlight.extract(recipe, shown, LONGEST_EXTRACT),
        row.rating() == null ? "" : row.rating() + " of 5",
        row.favourite(),
        playedBy(row),
        drawing(row, numbers),
        numbers,
        row.stale(),
        isHalfWritten(row) && recipe != null ? Resolution.of(recipe, gates).missing() : List.of());
  }

  /** Where the extract comes from, in words. */
  public static String whence(Highlight.Extract extract) {
    return switch (extract.place()) {
      case PEOPLE -> "People";
      case GEAR -> "Gear";
      default -> "Notes";
    };
  }

  private static List<Entry> numbers(Metrics metrics) {
    List<Entry> numbers = new ArrayList<>();
    for (Metric metric : KEY_NUMBERS) {
      OptionalDouble value = metrics.get(metric);
      numbers.add(
          new Entry(metric.key(), MetricWords.of(metric).name(), Reading.of(metric, value)));
    }
    numbers.add(new Entry("reach", "Reach", ReachWords.brief(metrics.reach())));
    return numbers;
  }

  /** A silent recipe has no shape: drawn against its own peak, its leak would look like a sound. */
  private static @Nullable String drawing(RecipeList.Row row, List<Entry> numbers) {
    if (row.shape() == null || row.metrics() == null || row.metrics().reach() == Reach.SILENT) {
      return null;
    }
    return SmallShapeDrawing.svg(row.shape(), label(numbers));
  }

  private static String label(List<Entry> numbers) {
    StringBuilder label = new StringBuilder("Shape");
    String separator = ": ";
    for (Entry number : numbers.subList(0, Math.min(2, numbers.size()))) {
      label.append(separator).append(number.name()).append(' ').append(number.value());
      separator = ", ";
    }
    return label.toString();
  }

  private static String playedBy(RecipeList.Row row) {
    String source = SourceWords.kind(row.sourceKind());
    return row.channels().isEmpty()
        ? source + ", no low-pass gate yet"
        : source + " through " + String.join(", then ", row.channels());
  }
}
