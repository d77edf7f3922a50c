package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;

import java.nio.ByteBuffer;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jooq.Field;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.SmallShape;

/**
 * A prediction as a row: a column per metric with its doubles bit for bit, null where the metric is
 * absent. All of them are null where there is no prediction.
 */
final class PredictionColumns {
  private static final Map<Metric, Field<Double>> METRICS = metrics();

  /** All columns by their names, as a statement selects them. */
  static final String NAMES =
      all().stream()
          .map(column -> PREDICTION.getName() + "." + column.getName())
          .collect(Collectors.joining(", "));

  private PredictionColumns() {}

  /**
   * All columns: the metrics in their order, the reach, which are of the envelope only, the shape.
   */
  static List<Field<?>> all() {
    List<Field<?>> columns = new ArrayList<>(METRICS.values());
    columns.add(PREDICTION.REACH);
    columns.add(PREDICTION.ENVELOPE_ONLY);
    columns.add(PREDICTION.SHAPE);
    return columns;
  }

  /** The columns with their values. */
  static Map<Field<?>, @Nullable Object> values(@Nullable Prediction prediction) {
    Map<Field<?>, @Nullable Object> row = new LinkedHashMap<>();
    all().forEach(column -> row.put(column, null));
    if (prediction != null) {
      Metrics metrics = prediction.metrics();
      metrics.values().forEach((metric, value) -> row.put(METRICS.get(metric), value));
      row.put(PREDICTION.REACH, word(metrics.reach()));
      row.put(
          PREDICTION.ENVELOPE_ONLY,
          metrics.envelopeOnly().stream().map(Metric::key).collect(Collectors.joining(" ")));
      row.put(PREDICTION.SHAPE, bytes(prediction.shape()));
    }
    return row;
  }

  /**
   * The metrics of a row, null where it has no prediction.
   *
   * @param first the place of the first of {@link #NAMES} in the row, counted from 1
   */
  static @Nullable Metrics metrics(ResultSet rows, int first) throws SQLException {
    int next = first + METRICS.size();
    String reach = rows.getString(next);
    if (reach == null) {
      return null;
    }
    Map<Metric, Double> values = new EnumMap<>(Metric.class);
    int column = first;
    for (Metric metric : METRICS.keySet()) {
      double value = rows.getDouble(column);
      if (value != 0 || !rows.wasNull()) {
        values.put(metric, value);
      }
      column++;
    }
    return new Metrics(values, reachOf(reach), named(rows.getString(next + 1)));
  }

  /** The reach that a word stands for; null for null. */
  static @Nullable Reach reach(@Nullable String word) {
    return word == null ? null : reachOf(word);
  }

  private static Reach reachOf(String word) {
    return Reach.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  /** The small shape of a row, null where it has no prediction; see {@link #metrics}. */
  static @Nullable SmallShape shape(ResultSet rows, int first) throws SQLException {
    byte[] bytes = rows.getBytes(first + METRICS.size() + 2);
    if (bytes == null) {
      return null;
    }
    double[] levels = new double[SmallShape.POINTS];
    ByteBuffer.wrap(bytes).asDoubleBuffer().get(levels);
    return new SmallShape(Arrays.stream(levels).boxed().toList());
  }

  private static Map<Metric, Field<Double>> metrics() {
    Map<Metric, Field<Double>> columns = new EnumMap<>(Metric.class);
    for (Metric metric : Metric.values()) {
      String name = metric.name().toLowerCase(Locale.ROOT);
      Field<Double> column = PREDICTION.field(name, Double.class);
      columns.put(metric, Objects.requireNonNull(column, name));
    }
    return Collections.unmodifiableMap(columns);
  }

  private static String word(Reach reach) {
    return reach.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Set<Metric> named(String keys) {
    List<String> names = List.of(keys.split(" "));
    Set<Metric> metrics = EnumSet.allOf(Metric.class);
    metrics.removeIf(metric -> !names.contains(metric.key()));
    return metrics;
  }

  private static byte[] bytes(SmallShape shape) {
    ByteBuffer bytes = ByteBuffer.allocate(SmallShape.POINTS * Double.BYTES);
    shape.levelsDb().forEach(bytes::putDouble);
    return bytes.array();
  }
}
