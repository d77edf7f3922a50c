package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Frequency;
import thudbook.sources.Modulator;
import thudbook.sources.Source;
import thudbook.yardstick.WorkedChannels;

/**
 * Reference test: the worked examples of the model's description. The values come from an
 * independent numerical integration (SciPy DOP853, rtol 1e-11); see the CSV files.
 */
class WorkedExamplesTest {
  private static final List<Metric> COLUMNS =
      List.of(
          Metric.PEAK_DB,
          Metric.ONSET,
          Metric.ATTACK,
          Metric.HOLD,
          Metric.RELEASE_20,
          Metric.RELEASE_40,
          Metric.RELEASE_60,
          Metric.FLAT_TIME,
          Metric.LET_GO,
          Metric.IGNORED_SHARE);

  @ParameterizedTest(name = "{0} {1} ms {2}")
  @CsvFileSource(resources = "worked-examples.csv", numLinesToSkip = 1)
  void everyRowOfTheTable(ArgumentsAccessor row) {
    Source source =
        row.getString(2).equals("white noise")
            ? new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5)
            : sine55();
    Metrics metrics =
        predict(
                source,
                decaying(1e-3, row.getDouble(1) / 1000),
                null,
                row.getString(0),
                Drive.UNITY)
            .metrics();
    for (int i = 0; i < COLUMNS.size(); i++) {
      check(metrics, COLUMNS.get(i), row.getDouble(3 + i));
    }
    assertThat(metrics.get(Metric.DEAD_TIME).orElseThrow())
        .isEqualTo(
            row.getString(0).equals("quick")
                ? 2.4e-3 / 7
                : row.getString(0).equals("long") ? 2.3e-3 / 7 : 0,
            within(1e-12));
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvFileSource(resources = "worked-examples-more.csv", numLinesToSkip = 1)
  void pulseAndFrequencyModulation(String sound, String key, double expected) {
    Metric metric =
        Stream.of(Metric.values()).filter(m -> m.key().equals(key)).findFirst().orElseThrow();
    check(named(sound).metrics(), metric, expected);
  }

  private static Prediction named(String sound) {
    if (sound.equals("pulse")) {
      Source noise = new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5);
      return predict(noise, new Envelope.Pulse(5, 4e-3), null, "quick", Drive.UNITY);
    }
    Source source =
        new Source.FrequencyModulation(
            Frequency.ofHertz(110),
            new Modulator.Absolute(Frequency.ofHertz(165)),
            Source.Wave.SINE,
            Double.parseDouble(sound.substring("index ".length())),
            Source.Phase.LOCKED,
            5);
    return predict(source, decaying(1e-3, 0.1), null, "quick", new Drive(0.8, 0, 12));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "repeated-strikes.csv", numLinesToSkip = 1)
  void repeatedStrikesBuildUp(int strike, double peakDb) {
    Strikes four = new Strikes.Every(0.125, 4, Strikes.Restart.LEVEL);
    Prediction prediction =
        predict(sine55(), decaying(5e-3, 0.2), four, "long", new Drive(0.5, 0, 12));
    assertThat(prediction.strikes()).hasSize(4);
    assertThat(prediction.strikes().get(strike).peakDb()).isEqualTo(peakDb, within(0.02));
    assertThat(prediction.metrics().get(Metric.BUILD_UP).orElseThrow())
        .isEqualTo(-10.05 + 10.63, within(0.02));
  }

  private static void check(Metrics metrics, Metric metric, Double expected) {
    if (expected == null) {
      assertThat(metrics.get(metric)).as(metric.key()).isEmpty();
      return;
    }
    double got = metrics.get(metric).orElseThrow();
    switch (metric.unit()) {
      case "s" -> {
        double tolerance = Math.max(0.002 * expected, 0.02);
        assertThat(1000 * got).as(metric.key()).isEqualTo(expected, within(tolerance));
      }
      case "dB" -> assertThat(got).as(metric.key()).isEqualTo(expected, within(0.02));
      default -> assertThat(got).as(metric.key()).isEqualTo(expected, within(0.0005 + 1e-9));
    }
  }

  private static Source sine55() {
    return new Source.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5);
  }

  private static Envelope decaying(double attackSeconds, double decaySeconds) {
    Rise rise = new Rise(attackSeconds, Curve.LINEAR, 1.3);
    return new Envelope.AttackHoldDecay(7, rise, 0, Fall.exponential(decaySeconds));
  }

  private static Prediction predict(
      Source source, Envelope envelope, Strikes strikes, String channel, Drive drive) {
    Stage stage = new Stage(WorkedChannels.of(channel), drive, null);
    return Predictor.predict(new Sound(source, envelope, strikes, List.of(stage), 0));
  }
}
