package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.library.Highlight;
import thudbook.library.Highlight.Piece;
import thudbook.library.RecipeList;
import thudbook.plots.SmallShapeDrawing;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Resolution;
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

  /** The row of a recipe in a list of no search. */
  static RecipeRow of(RecipeList.Row row, RecipeStore recipes, Things<Gate> gates) {
    return of(row, new Highlight(List.of()), recipes, gates);
  }

  /**
   * The row of a recipe.
   *
   * @param highlight marks what was looked for
   */
  static RecipeRow of(
      RecipeList.Row row, Highlight highlight, RecipeStore recipes, Things<Gate> gates) {
    List<String> shown = new ArrayList<>(row.tags());
    shown.add(row.title());
    if (row.heard() != null) {
      shown.add(row.heard());
    }
    shown.addAll(row.channels());
    boolean halfWritten = row.metrics() == null && !row.stale();
    boolean explained = highlight.isSeenIn(shown);
    Recipe recipe =
        halfWritten || !explained ? recipes.find(row.slug()).map(Kept::thing).orElse(null) : null;
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
        halfWritten && recipe != null ? Resolution.of(recipe, gates).missing() : List.of());
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
