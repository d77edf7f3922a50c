package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.library.Ordering;
import thudbook.library.RecipeList;
import thudbook.library.Wanted;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.SmallShape;

/** Property: the doubles of a prediction come back from a real file bit for bit. */
class StoredNumbersTest {
  private static final double[] EXTREMES = {
    Double.MIN_VALUE,
    -Double.MIN_VALUE,
    Double.MIN_NORMAL,
    Math.nextDown(Double.MIN_NORMAL),
    Double.MAX_VALUE,
    -Double.MAX_VALUE,
    0.0,
    1.0,
    Math.nextUp(1.0),
    Math.nextDown(1.0),
    0.1,
    1e15,
    0x1p53 + 2,
    -0x1p63,
    0x1p63,
    Math.PI
  };

  @TempDir Path folder;

  @Test
  void randomDoublesOverTheirWholeRange() {
    Random random = new Random(20261002);
    List<Prediction> written =
        Stream.generate(() -> Written.randomPrediction(random)).limit(200).toList();
    assertComesBack(written);
  }

  @Test
  void extremesInEveryColumn() {
    List<Prediction> written =
        Arrays.stream(EXTREMES)
            .mapToObj(
                value -> {
                  Map<Metric, Double> metrics = new EnumMap<>(Metric.class);
                  for (Metric metric : Metric.values()) {
                    metrics.put(metric, value);
                  }
                  return Written.prediction(metrics, EnumSet.allOf(Metric.class));
                })
            .toList();
    assertComesBack(written);
  }

  @Test
  void negativeZeroIsZeroBeforeItIsWritten() {
    Prediction prediction =
        Written.prediction(Map.of(Metric.PEAK_DB, -0.0), EnumSet.noneOf(Metric.class));
    assertThat(bits(prediction.metrics().values().get(Metric.PEAK_DB))).isZero();
    assertComesBack(List.of(prediction));
  }

  @Test
  void aShapeKeepsNegativeZero() {
    Prediction zeros =
        new Prediction(
            Written.prediction(Map.of(), EnumSet.noneOf(Metric.class)).metrics(),
            List.of(),
            List.of(),
            new SmallShape(Stream.generate(() -> -0.0).limit(SmallShape.POINTS).toList()),
            null);
    assertComesBack(List.of(zeros));
  }

  private void assertComesBack(List<Prediction> written) {
    try (Database database = Database.open(folder)) {
      Written.add(
          database,
          IntStream.range(0, written.size())
              .mapToObj(
                  i ->
                      Written.unread(
                          Written.recipe("r" + i, "%06d".formatted(i), List.of(), "any"),
                          written.get(i))));
    }
    try (Database database = Database.open(folder)) {
      List<RecipeList.Row> rows =
          database.library().page(Wanted.ALL, Ordering.TITLE, Hands.OWNER, 200, null).rows();
      assertThat(rows).hasSize(written.size());
      for (int i = 0; i < written.size(); i++) {
        Prediction expected = written.get(i);
        RecipeList.Row row = rows.get(i);
        assertThat(row.metrics()).isNotNull();
        assertThat(row.shape()).isNotNull();
        assertThat(row.metrics().reach()).isEqualTo(expected.metrics().reach());
        assertThat(row.metrics().envelopeOnly()).isEqualTo(expected.metrics().envelopeOnly());
        assertThat(row.metrics().values().keySet()).isEqualTo(expected.metrics().values().keySet());
        expected
            .metrics()
            .values()
            .forEach(
                (metric, value) ->
                    assertThat(bits(row.metrics().values().get(metric)))
                        .as(metric.key())
                        .isEqualTo(bits(value)));
        assertThat(row.shape().levelsDb().stream().map(StoredNumbersTest::bits))
            .isEqualTo(expected.shape().levelsDb().stream().map(StoredNumbersTest::bits).toList());
      }
    }
  }

  private static long bits(double value) {
    return Double.doubleToRawLongBits(value);
  }
}
