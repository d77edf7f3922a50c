package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.sources.Source;
import thudbook.yardstick.BruteForce;
import thudbook.yardstick.LiteralVoltage;
import thudbook.yardstick.RandomSounds;
import thudbook.yardstick.WorkedChannels;

/**
 * Property test: the curve's straight lines and the small shape against dense evaluation of the
 * integrated model.
 */
class CurveTest {
  private static final int SOUNDS_PER_SEED = 25;

  @Tag("long")
  @ParameterizedTest
  @ValueSource(longs = {301, 302})
  void straightLinesStayClose(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    SoftAssertions all = new SoftAssertions();
    int exact = 0;
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      Curve curve = Predictor.predictWithCurve(sound).curve();
      double worst = worstDb(curve, new BruteForce(sound, 1e-10));
      String what = "seed " + seed + " sound " + i + " points " + curve.points().size();
      all.assertThat(worst).as(what).isLessThan(Math.max(0.1, curve.worstDb()) + 1e-3);
      exact += curve.worstDb() <= 0.1 ? 1 : 0;
    }
    all.assertThat(exact).as("curves within 0.1 dB").isGreaterThanOrEqualTo(SOUNDS_PER_SEED - 1);
    all.assertAll();
  }

  private static double worstDb(Curve curve, BruteForce literal) {
    List<CurvePoint> points = curve.points();
    double floor = points.stream().mapToDouble(CurvePoint::outputDb).max().orElseThrow() - 60;
    double worst = 0;
    int place = 0;
    for (double t : literal.times()) {
      while (place + 2 < points.size() && points.get(place + 1).seconds() <= t) {
        place++;
      }
      CurvePoint a = points.get(place);
      CurvePoint b = points.get(place + 1);
      double want = 20 * Math.log10(literal.level(t));
      if (t >= a.seconds() && t <= b.seconds() && want > floor + 0.2) {
        double x = b.seconds() == a.seconds() ? 0 : (t - a.seconds()) / (b.seconds() - a.seconds());
        double got = a.outputDb() + x * (b.outputDb() - a.outputDb());
        worst = Math.max(worst, Math.abs(got - want));
      }
    }
    return worst;
  }

  @Test
  void jumpsOfTheControlVoltageAreTwoPoints() {
    Envelope pulse = new Envelope.Pulse(5, 4e-3);
    Curve curve = Predictor.predictWithCurve(quick(pulse)).curve();
    for (double jump : new double[] {0, 4e-3}) {
      List<Double> volts =
          curve.points().stream()
              .filter(point -> point.seconds() == jump)
              .map(point -> point.stages().get(0).controlVolts())
              .toList();
      assertThat(volts)
          .as("control voltage at " + jump)
          .isEqualTo(jump == 0 ? List.of(0.0, 5.0) : List.of(5.0, 0.0));
    }
    assertThat(curve.points().get(0).seconds()).isNegative();
  }

  @Test
  void theControlVoltageIsDrawnWithItsCorners() {
    Envelope envelope =
        new Envelope.AttackHoldDecay(7, Rise.linear(1e-3), 2e-3, Fall.exponential(0.1));
    Curve curve = Predictor.predictWithCurve(quick(envelope)).curve();
    LiteralVoltage literal = new LiteralVoltage(envelope, null, Drive.UNITY);
    assertThat(curve.points()).extracting(CurvePoint::seconds).contains(0.0, 1e-3, 3e-3);
    for (CurvePoint point : curve.points()) {
      assertThat(point.stages().get(0).controlVolts())
          .isEqualTo(literal.at(point.seconds()), within(1e-9));
    }
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(longs = {311})
  void theSmallShapeIsTheLevelAtFixedTimes(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < 15; i++) {
      Sound sound = sounds.next();
      BruteForce literal = new BruteForce(sound, 1e-10);
      double top = literal.metrics().get(Metric.PEAK_DB).orElseThrow();
      SmallShape shape = Predictor.predict(sound).shape();
      for (int k = 0; k < 48; k++) {
        double seconds = 0.5e-3 * Math.pow(8000, k / 47.0);
        double want = Math.max(-60, 20 * Math.log10(literal.loneLevel(seconds)) - top);
        assertThat(shape.levelsDb().get(k))
            .as("seed " + seed + " sound " + i + " point " + k)
            .isEqualTo(want, within(1e-5));
      }
    }
  }

  private static Sound quick(Envelope envelope) {
    return new Sound(
        new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5),
        envelope,
        null,
        List.of(new Stage(WorkedChannels.of("quick"), Drive.UNITY, null)),
        0);
  }
}
