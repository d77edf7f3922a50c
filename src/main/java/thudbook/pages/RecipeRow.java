package thudbook.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.library.RecipeList;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;

/**
 * One recipe of the list, as it is shown.
 *
 * @param playedBy source and channels in words
 * @param drawing safe SVG; null: no prediction yet, or silent
 * @param numbers the key numbers; empty: no prediction yet
 * @param stale whether the numbers are being recomputed
 * @param missing what keeps it from being predicted; empty where it is predicted or about to be
 */
public record RecipeRow(
    String slug,
    String title,
    List<String> tags,
    @Nullable String by,
    @Nullable String heard,
    String changed,
    String playedBy,
    @Nullable String drawing,
    List<Entry> numbers,
    boolean stale,
    List<String> missing) {
  private static final List<Metric> KEY_NUMBERS =
      List.of(Metric.HOLD, Metric.RELEASE_40, Metric.PEAK_DB, Metric.THUMP_PEAK);

  /** The row of a recipe. */
  static RecipeRow of(RecipeList.Row row, List<String> missing) {
    Metrics metrics = row.metrics();
    List<Entry> numbers = metrics == null ? List.of() : numbers(metrics);
    return new RecipeRow(
        row.slug(),
        row.title(),
        row.tags(),
        row.by(),
        row.heard(),
        Reading.day(row.changedAt()),
        playedBy(row),
        drawing(row, numbers),
        numbers,
        row.stale(),
        missing);
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
