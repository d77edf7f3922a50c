package thudbook.predictions;

import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.yardstick.BruteForce;
import thudbook.yardstick.RandomSounds;

/**
 * Property test: every number of seeded random sounds against brute force (literal envelopes, the
 * Hipparchus integrator, dense sampling and bisection, spectra as plain sums), absent ones, stages
 * and strikes included.
 */
@Tag("long")
class BruteForceAgreementTest {
  private static final int SOUNDS_PER_SEED = 30;

  /** Where a crossing is flat, time is uncertain by more than this; level never is. */
  private static final double SAME_LEVEL = 1e-7;

  @ParameterizedTest
  @ValueSource(longs = {101, 102, 103, 104})
  void everyNumberAgrees(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    SoftAssertions all = new SoftAssertions();
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      String what = "seed " + seed + " sound " + i + " ";
      BruteForce expected = new BruteForce(sound, 1e-11);
      Prediction prediction = Predictor.predict(sound);
      compare(all, what, expected, prediction.metrics());
      compareStages(all, what, expected.stages(), prediction.stages());
      compareStrikes(all, what, expected.perStrike(), prediction.strikes());
    }
    all.assertAll();
  }

  private static void compare(SoftAssertions all, String what, BruteForce literal, Metrics actual) {
    Metrics expected = literal.metrics();
    for (Metric metric : Metric.values()) {
      String name = what + metric.key();
      if (expected.get(metric).isEmpty() || actual.get(metric).isEmpty()) {
        all.assertThat(actual.get(metric)).as(name).isEqualTo(expected.get(metric));
        continue;
      }
      double want = expected.get(metric).getAsDouble();
      double got = actual.get(metric).getAsDouble();
      if (metric == Metric.PEAK_TIME) {
        all.assertThat(literal.loneLevel(got))
            .as(name)
            .isCloseTo(literal.loneLevel(want), within(SAME_LEVEL));
      } else {
        all.assertThat(got).as(name).isCloseTo(want, within(tolerance(metric, want)));
      }
    }
    all.assertThat(actual.reach()).as(what + "reach").isEqualTo(expected.reach());
    Set<Metric> judged =
        EnumSet.of(
            Metric.ATTACK, Metric.HOLD, Metric.RELEASE_20, Metric.RELEASE_40, Metric.RELEASE_60);
    Set<Metric> only = EnumSet.copyOf(judged);
    only.retainAll(actual.envelopeOnly());
    all.assertThat(only).as(what + "envelopeOnly").isEqualTo(expected.envelopeOnly());
  }

  private static double tolerance(Metric metric, double value) {
    return switch (metric.unit()) {
      case "s" -> 1e-5 * Math.abs(value) + 1e-7;
      case "Hz" -> 1e-5 * Math.abs(value);
      case "dB" -> 1e-5;
      default -> 1e-6;
    };
  }

  private static void compareStages(
      SoftAssertions all, String what, List<StageMetrics> expected, List<StageMetrics> actual) {
    all.assertThat(actual).as(what + "stages").hasSameSizeAs(expected);
    for (int i = 0; i < expected.size(); i++) {
      StageMetrics want = expected.get(i);
      StageMetrics got = actual.get(i);
      String name = what + "stage " + i + " ";
      same(all, name + "deadTime", want.deadTime(), got.deadTime());
      same(all, name + "flatTime", want.flatTime(), got.flatTime());
      same(all, name + "letGo", want.letGo(), got.letGo());
      same(all, name + "ignoredShare", want.ignoredShare(), got.ignoredShare());
      same(all, name + "peakOpenness", want.peakOpenness(), got.peakOpenness());
      all.assertThat(got.reach()).as(name + "reach").isEqualTo(want.reach());
    }
  }

  private static void same(SoftAssertions all, String name, Double want, Double got) {
    if (want == null || got == null) {
      all.assertThat(got).as(name).isEqualTo(want);
    } else {
      all.assertThat(got).as(name).isCloseTo(want, within(1e-7));
    }
  }

  private static void compareStrikes(
      SoftAssertions all, String what, List<StrikeMetrics> expected, List<StrikeMetrics> actual) {
    all.assertThat(actual).as(what + "strikes").hasSameSizeAs(expected);
    for (int i = 0; i < Math.min(expected.size(), actual.size()); i++) {
      String name = what + "strike " + i + " ";
      all.assertThat(actual.get(i).peakDb())
          .as(name + "peakDb")
          .isCloseTo(expected.get(i).peakDb(), within(1e-5));
      all.assertThat(actual.get(i).separated())
          .as(name + "separated")
          .isEqualTo(expected.get(i).separated());
    }
  }
}
