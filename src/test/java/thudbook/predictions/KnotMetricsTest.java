package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.gates.Channel;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: what the control voltage does with threshold and ceiling, by hand: lines that meet a
 * voltage at a time, and the cases where a voltage that is held or reached lies on a knot (1e-9 V).
 */
class KnotMetricsTest {
  private static final Channel GATE = ChannelBuilder.amplifier().between(2, 5).build();

  private static Prediction predict(Envelope envelope, Drive... drives) {
    List<Stage> stages = Arrays.stream(drives).map(drive -> new Stage(GATE, drive, null)).toList();
    return Predictor.predict(new Sound(OneCellTest.sine(500), envelope, null, stages, 0));
  }

  private static Metrics metrics(Envelope envelope, Drive... drives) {
    return predict(envelope, drives).metrics();
  }

  /** 10 V up in 100 ms, held for 100 ms, down in 100 ms: a volt in 10 ms. */
  private static Envelope trapezoid(double peak) {
    return new Envelope.AttackHoldDecay(
        peak, Rise.linear(0.1), 0.1, new Fall(0.1, Curve.LINEAR, 0.01));
  }

  private static void check(Metrics metrics, Metric metric, double expected) {
    assertThat(metrics.get(metric).orElseThrow())
        .as(metric.key())
        .isEqualTo(expected, within(1e-11));
  }

  @Test
  void linesMeetThresholdAndCeilingAtTheirTimes() {
    Metrics metrics = metrics(trapezoid(10), Drive.UNITY);
    check(metrics, Metric.DEAD_TIME, 0.02);
    check(metrics, Metric.FLAT_TIME, 0.05 + 0.1 + 0.05);
    check(metrics, Metric.LET_GO, 0.28);
    check(metrics, Metric.IGNORED_SHARE, 0.2);
    assertThat(metrics.reach()).isEqualTo(Reach.OPEN);
  }

  @Test
  void severalStagesAreLedByTheLatestAndTheFirstToLetGo() {
    Drive half = new Drive(0.5, 0, 12);
    Prediction prediction = predict(trapezoid(10), Drive.UNITY, half, Drive.UNITY);
    Metrics metrics = prediction.metrics();
    check(metrics, Metric.DEAD_TIME, 0.04);
    // Behind half the gain the ceiling is reached at the peak and held for 100 ms.
    check(metrics, Metric.FLAT_TIME, 0.1);
    check(metrics, Metric.LET_GO, 0.26);
    check(metrics, Metric.IGNORED_SHARE, 0.4);
    assertThat(prediction.stages()).hasSize(3);
    assertThat(prediction.stages().get(0).letGo()).isEqualTo(0.28, within(1e-11));
    assertThat(prediction.stages().get(1).deadTime()).isEqualTo(0.04, within(1e-11));
    assertThat(prediction.stages().get(1).ignoredShare()).isEqualTo(0.4, within(1e-11));
  }

  @Test
  void aSilentStageSilencesAll() {
    Metrics metrics = metrics(trapezoid(10), Drive.UNITY, new Drive(0.1, 0, 12));
    assertThat(metrics.get(Metric.DEAD_TIME)).isEmpty();
    check(metrics, Metric.LET_GO, 0.28);
    check(metrics, Metric.FLAT_TIME, 0);
    assertThat(metrics.reach()).isEqualTo(Reach.SILENT);
    Metrics silent = metrics(trapezoid(1), Drive.UNITY);
    assertThat(silent.get(Metric.LET_GO)).isEmpty();
    check(silent, Metric.IGNORED_SHARE, 1);
    assertThat(silent.reach()).isEqualTo(Reach.SILENT);
    // One stage is silent, the other never lets go.
    Metrics mixed = metrics(trapezoid(1), Drive.UNITY, new Drive(1, 3, 12));
    assertThat(mixed.get(Metric.LET_GO)).isEmpty();
    check(mixed, Metric.IGNORED_SHARE, 1);
  }

  /** Open before the strike: no dead time, and nothing is ignored unless it is shut by it. */
  @Test
  void anOpenGateHasNoDeadTime() {
    Metrics metrics = metrics(trapezoid(10), new Drive(1, 3, 12));
    check(metrics, Metric.DEAD_TIME, 0);
    check(metrics, Metric.IGNORED_SHARE, 0);
    assertThat(metrics.get(Metric.LET_GO)).isEmpty();
    assertThat(metrics.reach()).isEqualTo(Reach.IDLE_OPEN);
    Metrics open = metrics(trapezoid(10), new Drive(1, 6, 12));
    assertThat(open.get(Metric.FLAT_TIME)).isEmpty();
    // A recording that begins above the threshold and falls through it at once lets go at 0.
    Envelope jump =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, 4), new Envelope.Sample(0.1, 0)));
    Metrics fallen = metrics(jump, Drive.UNITY);
    check(fallen, Metric.DEAD_TIME, 0);
    check(fallen, Metric.LET_GO, 0.05);
    assertThat(fallen.get(Metric.IGNORED_SHARE)).isEmpty();
    assertThat(fallen.reach()).isEqualTo(Reach.IDLE_OPEN);
  }

  /** An inverted envelope shuts an open gate: there is no strike to time. */
  @Test
  void aGateThatIsShutByTheStrikeHasNoOnset() {
    Envelope down =
        new Envelope.AttackDecaySustainRelease(
            10, Rise.linear(0), Fall.exponential(0.01), 1, 60, Fall.exponential(60));
    Prediction prediction = predict(down, new Drive(-1, 3, 12));
    assertThat(prediction.stages().get(0).reach()).isEqualTo(Reach.IDLE_OPEN);
    assertThat(prediction.metrics().get(Metric.ONSET)).isEmpty();
  }

  /** Peak equals ceiling: touched for no time by a line, so brief and not partial. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-9, -0.9e-9})
  void aPeakOnTheCeilingReachesIt(double off) {
    Envelope touching =
        new Envelope.AttackHoldDecay(
            5 + off, Rise.linear(1e-3), 0, new Fall(1e-3, Curve.LINEAR, 0.01));
    Metrics metrics = metrics(touching, Drive.UNITY);
    assertThat(metrics.reach()).isEqualTo(Reach.BRIEF);
    assertThat(metrics.get(Metric.FLAT_TIME).orElseThrow()).isEqualTo(0, within(1e-11));
    Envelope below =
        new Envelope.AttackHoldDecay(
            5 - 1e-6, Rise.linear(1e-3), 0, new Fall(1e-3, Curve.LINEAR, 0.01));
    assertThat(metrics(below, Drive.UNITY).reach()).isEqualTo(Reach.PARTIAL);
    // Held there, it is at its ceiling for as long as it is held.
    Metrics held = metrics(trapezoid(5 + off), Drive.UNITY);
    assertThat(held.get(Metric.FLAT_TIME).orElseThrow()).isEqualTo(0.1, within(1e-9));
  }

  /** Rest equals threshold: shut before the strike, dead for no time. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-9, -0.9e-9})
  void aRestOnTheThresholdIsShut(double off) {
    Metrics metrics = metrics(trapezoid(10), new Drive(1, 2 + off, 12));
    assertThat(metrics.reach()).isEqualTo(Reach.OPEN);
    assertThat(metrics.get(Metric.DEAD_TIME).orElseThrow()).isEqualTo(0, within(1e-9));
    assertThat(metrics.get(Metric.LET_GO).orElseThrow()).isEqualTo(0.3, within(1e-9));
    assertThat(metrics.get(Metric.IGNORED_SHARE).orElseThrow()).isEqualTo(0, within(1e-7));
    Metrics above = metrics(trapezoid(10), new Drive(1, 2 + 1e-6, 12));
    assertThat(above.reach()).isEqualTo(Reach.IDLE_OPEN);
    assertThat(above.get(Metric.LET_GO)).isEmpty();
  }

  /** A straight decay to a sustain on the threshold is shut from there on; an exponential never. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-9, -0.9e-9})
  void aSustainOnTheThreshold(double off) {
    double sustain = (2 + off) / 10;
    Envelope line =
        new Envelope.AttackDecaySustainRelease(
            10,
            Rise.linear(0.1),
            new Fall(0.1, Curve.LINEAR, 0.01),
            sustain,
            1,
            new Fall(0.1, Curve.LINEAR, 0.01));
    assertThat(metrics(line, Drive.UNITY).get(Metric.LET_GO).orElseThrow())
        .isEqualTo(0.2, within(1e-9));
    Envelope tending =
        new Envelope.AttackDecaySustainRelease(
            10,
            Rise.linear(0.1),
            Fall.exponential(0.1),
            sustain,
            1,
            new Fall(0.1, Curve.LINEAR, 0.01));
    assertThat(metrics(tending, Drive.UNITY).get(Metric.LET_GO).orElseThrow())
        .isEqualTo(1, within(1e-9));
  }

  /** A pulse on the threshold is silent, one on the ceiling is flat for its length. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-9, -0.9e-9})
  void aPulseOnAKnot(double off) {
    Metrics silent = metrics(new Envelope.Pulse(2 + off, 0.01), Drive.UNITY);
    assertThat(silent.reach()).isEqualTo(Reach.SILENT);
    assertThat(silent.get(Metric.DEAD_TIME)).isEmpty();
    Metrics flat = metrics(new Envelope.Pulse(5 + off, 0.01), Drive.UNITY);
    check(flat, Metric.FLAT_TIME, 0.01);
  }

  /** A rail on the ceiling is at it for as long as the voltage is beyond; on the threshold shut. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-9, -0.9e-9})
  void aRailOnAKnot(double off) {
    Metrics flat = metrics(trapezoid(10), new Drive(1, 0, 5 + off));
    assertThat(flat.get(Metric.FLAT_TIME).orElseThrow()).isEqualTo(0.2, within(1e-9));
    assertThat(metrics(trapezoid(10), new Drive(1, 0, 2 + off)).reach()).isEqualTo(Reach.SILENT);
  }

  /** The share of the falling segment that is ignored is that of the one that lets go. */
  @Test
  void theReleaseLetsGoWhereTheSustainIsHeard() {
    Envelope envelope =
        new Envelope.AttackDecaySustainRelease(
            10,
            Rise.linear(0.1),
            new Fall(0.1, Curve.LINEAR, 0.01),
            0.8,
            1,
            new Fall(0.4, Curve.LINEAR, 0.01));
    check(metrics(envelope, Drive.UNITY), Metric.LET_GO, 1.3);
    check(metrics(envelope, Drive.UNITY), Metric.IGNORED_SHARE, 0.25);
  }
}
