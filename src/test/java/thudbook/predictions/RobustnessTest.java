package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.yardstick.RandomSounds;

/**
 * Property test: seeded random sounds at the very ends of all ranges (times from 1 µs to 60 s,
 * knots 1.1 mV apart, 64 strikes, 4,096 samples) are predicted with numbers only. The limit of time
 * is no figure of performance: it ends a search that would not end.
 */
@Tag("long")
class RobustnessTest {
  private static final int SOUNDS_PER_SEED = 500;
  private static final Duration MOST_PER_SOUND = Duration.ofSeconds(20);

  @ParameterizedTest
  @ValueSource(longs = {201, 202, 203, 204, 205})
  void extremesArePredicted(long seed) {
    RandomSounds sounds = RandomSounds.extreme(seed);
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      String what = "seed " + seed + " sound " + i + " " + sound;
      Prediction prediction =
          assertTimeoutPreemptively(
              MOST_PER_SOUND, () -> Predictor.predictWithCurve(sound), () -> what);
      assertSane(what, sound, prediction);
    }
  }

  private static void assertSane(String what, Sound sound, Prediction prediction) {
    prediction
        .metrics()
        .values()
        .forEach(
            (metric, value) -> {
              assertThat(value).as(what + metric.key()).isFinite();
              if (metric.unit().equals("s") || metric.unit().equals("1")) {
                assertThat(value).as(what + metric.key()).isNotNegative();
              }
            });
    assertThat(prediction.stages()).as(what).hasSameSizeAs(sound.stages());
    assertThat(prediction.shape().levelsDb())
        .as(what)
        .allSatisfy(level -> assertThat(level).isBetween(-60.0, 1e-9));
    Curve curve = prediction.curve();
    int strikes = sound.strikes() == null ? 0 : sound.strikes().seconds().size();
    assertThat(curve.points()).as(what).hasSizeBetween(2, 200 + 40 * Math.max(1, strikes));
    double before = Double.NEGATIVE_INFINITY;
    for (CurvePoint point : curve.points()) {
      assertThat(point.seconds()).as(what).isFinite().isGreaterThanOrEqualTo(before);
      assertThat(point.outputDb()).as(what).isFinite();
      assertThat(point.offsetVolts()).as(what).isFinite();
      assertThat(point.brightnessHertz()).as(what).isFinite().isPositive();
      before = point.seconds();
    }
  }
}
