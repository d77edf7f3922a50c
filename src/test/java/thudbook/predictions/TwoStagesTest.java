package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: two stages of one cell each in series are products of what capacitors do, looked at
 * every few microseconds. Levels multiply; an earlier offset is multiplied, then the next is added.
 */
class TwoStagesTest {
  private static final double LENGTH = 0.01;
  private static final double STEP = 2e-6;
  private static final int STEPS = 100_000;
  private static final double LEAK = 1e-2;

  private static double openness(double opening, double release, double time) {
    double reached = 1 - Math.exp(-LENGTH / opening);
    return time <= LENGTH
        ? 1 - Math.exp(-time / opening)
        : reached * Math.exp(-(time - LENGTH) / release);
  }

  private static double first(double time) {
    return openness(0.004, 0.05, time);
  }

  private static double second(double time) {
    return openness(0.002, 0.02, time);
  }

  private static double level(double openness) {
    return LEAK + (1 - LEAK) * openness;
  }

  private static double both(double time) {
    return level(first(time)) * level(second(time));
  }

  private static double offset(double time) {
    return 2 * first(time) * level(second(time)) + second(time);
  }

  private static Prediction predict(double coupling) {
    ChannelBuilder one = ChannelBuilder.amplifier().leak(-40.0).times(0.004, 0.05).output(2, 9);
    ChannelBuilder two = ChannelBuilder.amplifier().leak(-40.0).times(0.002, 0.02).output(1, 8);
    return Predictor.predict(
        new Sound(
            OneCellTest.sine(500),
            new Envelope.Pulse(8, LENGTH),
            null,
            List.of(
                new Stage(one.build(), Drive.UNITY, null),
                new Stage(two.build(), Drive.UNITY, null)),
            coupling));
  }

  private static double largest(DoubleUnaryOperator function) {
    double largest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k <= STEPS; k++) {
      largest = Math.max(largest, function.applyAsDouble(k * STEP));
    }
    return largest;
  }

  private static void check(Metrics metrics, Metric metric, double expected, double tolerance) {
    assertThat(metrics.get(metric).orElseThrow())
        .as(metric.key())
        .isEqualTo(expected, within(tolerance));
  }

  @Test
  void levelsMultiplyAndOffsetsAreHandedOn() {
    Metrics metrics = predict(0).metrics();
    double top = both(LENGTH);
    check(metrics, Metric.PEAK_DB, 20 * Math.log10(top), 1e-9);
    check(metrics, Metric.FLOOR_DB, -80 - 20 * Math.log10(top), 1e-9);
    check(metrics, Metric.THUMP_PEAK, largest(t -> Math.abs(offset(t))), 1e-6);
    double used =
        Math.max(
            largest(t -> 5 * level(first(t)) / (9 - 2 * first(t))),
            largest(t -> 5 * both(t) / (8 - offset(t))));
    check(metrics, Metric.HEADROOM_POSITIVE, -20 * Math.log10(used), 1e-6);
    double below =
        Math.max(
            largest(t -> 5 * level(first(t)) / (9 + 2 * first(t))),
            largest(t -> 5 * both(t) / (8 + offset(t))));
    check(metrics, Metric.HEADROOM_NEGATIVE, -20 * Math.log10(below), 1e-6);
    check(metrics, Metric.PEAK_OPENNESS, second(LENGTH), 1e-12);
    assertThat(predict(0).stages().get(0).peakOpenness()).isEqualTo(first(LENGTH), within(1e-12));
  }

  /** z′ = ω(d − z) step by step, each step exact for the offset in its middle. */
  @ParameterizedTest
  @ValueSource(doubles = {3, 30, 400})
  void couplingIsAHighPassOfTheWholeOffset(double hertz) {
    double omega = 2 * Math.PI * hertz;
    double low = 0;
    double largest = 0;
    for (int k = 0; k < STEPS; k++) {
      low += (offset((k + 0.5) * STEP) - low) * -Math.expm1(-omega * STEP);
      largest = Math.max(largest, Math.abs(offset((k + 1) * STEP) - low));
    }
    check(predict(hertz).metrics(), Metric.THUMP_PEAK, largest, 2e-5 * largest);
  }
}
