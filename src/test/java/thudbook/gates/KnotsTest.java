package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.gates.Target.Zone;
import thudbook.gates.Transfer.Knot;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: what the model says of voltages on a knot. Held voltages, and ends of straight lines,
 * within 1e-9 V of a knot are on it: not above a threshold, at a ceiling. What only tends to a knot
 * never reaches it.
 */
class KnotsTest {
  private static final double WITHIN = 0.9e-9;
  private static final double BEYOND = 1.1e-9;
  private static final Channel GATE = ChannelBuilder.amplifier().between(2, 5).build();

  private static Motion motion(Envelope envelope, Drive drive) {
    return Motion.of(ControlVoltage.of(envelope, null, drive), GATE);
  }

  private static Motion pulse(double volts) {
    return motion(new Envelope.Pulse(volts, 1), Drive.UNITY);
  }

  private static Zone first(Motion motion) {
    return motion.pieces().get(0).target().zone();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, WITHIN, -WITHIN, -BEYOND, -0.1})
  void aHeldVoltageOnOrBelowTheThresholdIsNotAboveIt(double off) {
    assertThat(first(pulse(2 + off))).isEqualTo(Zone.SHUT);
    assertThat(pulse(2 + off).openness(0.9)).isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {BEYOND, 1e-6, 1, 3 - 1e-6, 3 - BEYOND})
  void aHeldVoltageBetweenIsBetween(double above) {
    assertThat(first(pulse(2 + above))).isEqualTo(Zone.BETWEEN);
    assertThat(pulse(2 + above).touchesCeiling()).isFalse();
    assertThat(pulse(2 + above).openness(1)).isEqualTo(above / 3, within(1e-13));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -WITHIN, WITHIN, BEYOND, 3})
  void aHeldVoltageOnOrAboveTheCeilingIsAtIt(double above) {
    assertThat(first(pulse(5 + above))).isEqualTo(Zone.CEILING);
    assertThat(pulse(5 + above).touchesCeiling()).isTrue();
    assertThat(pulse(5 + above).openness(1)).isEqualTo(1, within(1e-15));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, WITHIN, -WITHIN})
  void aRestOnTheThresholdIsShut(double off) {
    Motion motion = motion(new Envelope.Pulse(1, 1), new Drive(1, 2 + off, 12));
    assertThat(motion.restZone()).isEqualTo(Zone.SHUT);
    assertThat(motion.restOpenness()).isZero();
    assertThat(motion.finalOpenness()).isZero();
    assertThat(motion.openness(-1)).isZero();
  }

  @Test
  void aRestJustAboveTheThresholdIsOpen() {
    Motion motion = motion(new Envelope.Pulse(1, 1), new Drive(1, 2 + BEYOND, 12));
    assertThat(motion.restZone()).isEqualTo(Zone.BETWEEN);
    assertThat(motion.restOpenness()).isEqualTo(BEYOND / 3, within(1e-15));
    Motion open = motion(new Envelope.Pulse(1, 1), new Drive(1, 5 - WITHIN, 12));
    assertThat(open.restZone()).isEqualTo(Zone.CEILING);
    assertThat(open.restOpenness()).isEqualTo(1);
  }

  /** A straight attack whose peak is the ceiling touches it; one that stays below does not. */
  @Test
  void aLineThatEndsOnTheCeilingTouchesIt() {
    assertThat(line(5, Curve.LINEAR).touchesCeiling()).isTrue();
    assertThat(line(5 - WITHIN, Curve.LINEAR).touchesCeiling()).isTrue();
    assertThat(line(5 - BEYOND, Curve.LINEAR).touchesCeiling()).isFalse();
    assertThat(line(5 + 1e-6, Curve.LINEAR).touchesCeiling()).isTrue();
    // There is no time at which it stays there.
    assertThat(line(5, Curve.LINEAR).pieces())
        .noneMatch(piece -> piece.target().zone() == Zone.CEILING);
  }

  /** A peak on the threshold never opens: 2 V at the end of a line, or 1e-9 V beside it. */
  @Test
  void aLineThatEndsOnTheThresholdOpensNothing() {
    for (double off : new double[] {0, WITHIN, -WITHIN}) {
      Motion motion = line(2 + off, Curve.LINEAR);
      assertThat(motion.pieces()).allMatch(piece -> piece.target().zone() == Zone.SHUT);
      assertThat(motion.openness(0.1)).isZero();
    }
    assertThat(line(2 + 1e-6, Curve.LINEAR).pieces())
        .anyMatch(piece -> piece.target().zone() == Zone.BETWEEN);
  }

  private static Motion line(double peak, Curve fall) {
    return motion(
        new Envelope.AttackHoldDecay(peak, Rise.linear(0.1), 0, new Fall(0.1, fall, 0.01)),
        Drive.UNITY);
  }

  /** Voltages through knots at times that a line tells: 1 V per 0.1 s. */
  @Test
  void aLineMeetsEachKnotAtItsTime() {
    Transfer transfer =
        new Transfer(List.of(new Knot(1, 0), new Knot(2, 0.5), new Knot(4, 0.5), new Knot(6, 1)));
    Channel channel = ChannelBuilder.amplifier().transfer(transfer).build();
    Envelope up =
        new Envelope.Recorded(List.of(new Envelope.Sample(0, 0), new Envelope.Sample(0.8, 8)));
    Motion rising = Motion.of(ControlVoltage.of(up, null, Drive.UNITY), channel);
    assertCorners(rising, 0.1, 0.2, 0.4, 0.6, 0.8);
    Motion falling = Motion.of(ControlVoltage.of(up, null, new Drive(-1, 8, 12)), channel);
    assertCorners(falling, 0.2, 0.4, 0.6, 0.7, 0.8);
    assertThat(rising.pieces().get(0).target().zone()).isEqualTo(Zone.SHUT);
    assertThat(falling.pieces().get(0).target().zone()).isEqualTo(Zone.CEILING);
    assertThat(falling.finalOpenness()).isZero();
    assertThat(rising.finalOpenness()).isEqualTo(1);
  }

  private static void assertCorners(Motion motion, double... times) {
    List<Double> starts = motion.pieces().stream().map(MotionPiece::start).toList();
    for (double time : times) {
      assertThat(starts)
          .as("corners")
          .anySatisfy(t -> assertThat(t).isCloseTo(time, within(1e-12)));
    }
  }

  /** The target is read off the knots: on them, halfway between, and beside both ends. */
  @ParameterizedTest
  @ValueSource(doubles = {-3, 1, 1.5, 2, 2.5, 3, 4, 5, 5.5, 6, 9})
  void heldVoltagesAskForTheOpennessOfTheKnots(double volts) {
    Transfer transfer =
        new Transfer(List.of(new Knot(1, 0), new Knot(2, 0.25), new Knot(4, 0.25), new Knot(6, 1)));
    double expected =
        volts <= 1
            ? 0
            : volts <= 2
                ? 0.25 * (volts - 1)
                : volts <= 4 ? 0.25 : volts >= 6 ? 1 : 0.25 + 0.375 * (volts - 4);
    Channel channel = ChannelBuilder.amplifier().transfer(transfer).build();
    Envelope held =
        new Envelope.Recorded(
            List.of(new Envelope.Sample(0, volts), new Envelope.Sample(1, volts)));
    Motion motion = Motion.of(ControlVoltage.of(held, null, Drive.UNITY), channel);
    assertThat(motion.restOpenness()).isEqualTo(expected, within(1e-15));
    assertThat(motion.finalOpenness()).isEqualTo(expected, within(1e-15));
    assertThat(motion.openness(0.5)).isEqualTo(expected, within(1e-15));
  }

  /** A decay to a sustain on the threshold tends to it and never lets go before key up. */
  @ParameterizedTest
  @ValueSource(doubles = {0, WITHIN, -WITHIN})
  void aDecayTowardsTheThresholdNeverReachesIt(double off) {
    Motion motion = sustained(2 + off);
    double keyUp = 2;
    assertThat(motion.pieces().stream().filter(p -> p.start() < keyUp && p.start() > 0.001))
        .allMatch(piece -> piece.target().zone() != Zone.SHUT);
  }

  /** A sustain clearly below the threshold is reached: ln of the distances over the constant. */
  @Test
  void aDecayThroughTheThresholdMeetsItInClosedForm() {
    Motion motion = sustained(1);
    double time = 0.1 / Math.log(100) * Math.log((10 - 1) / (2.0 - 1));
    assertCorners(motion, time, 0.1 / Math.log(100) * Math.log((10 - 1) / (5.0 - 1)));
    assertThat(motion.pieces().stream().filter(p -> p.start() >= time - 1e-12))
        .allMatch(piece -> piece.target().zone() == Zone.SHUT);
  }

  /** A decay to a sustain on the ceiling stays above it. */
  @ParameterizedTest
  @ValueSource(doubles = {0, WITHIN, -WITHIN})
  void aDecayTowardsTheCeilingStaysAtIt(double off) {
    assertThat(sustained(5 + off).pieces().stream().filter(p -> p.start() < 1.99))
        .allMatch(piece -> piece.target().zone() == Zone.CEILING);
  }

  private static Motion sustained(double sustainVolts) {
    return motion(
        new Envelope.AttackDecaySustainRelease(
            10, Rise.linear(0), Fall.exponential(0.1), sustainVolts / 10, 2, Fall.exponential(0.1)),
        Drive.UNITY);
  }

  /** A rail on the ceiling is at it, a rail on the threshold is not above it. */
  @Test
  void aRailOnAKnotIsOnIt() {
    Envelope over = new Envelope.AttackHoldDecay(12, Rise.linear(0.1), 0.5, Fall.exponential(0.1));
    for (double off : new double[] {0, WITHIN, -WITHIN}) {
      Motion open = motion(over, new Drive(1, 0, 5 + off));
      assertThat(open.touchesCeiling()).isTrue();
      assertThat(open.pieces()).anyMatch(piece -> piece.target().zone() == Zone.CEILING);
      Motion shut = motion(over, new Drive(1, 0, 2 + off));
      assertThat(shut.pieces()).allMatch(piece -> piece.target().zone() == Zone.SHUT);
    }
    Motion below = motion(over, new Drive(1, 0, 5 - 1e-6));
    assertThat(below.touchesCeiling()).isFalse();
  }
}
