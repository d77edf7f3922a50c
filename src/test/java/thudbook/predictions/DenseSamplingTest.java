package thudbook.predictions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Strikes;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Motion;
import thudbook.gates.MotionPiece;
import thudbook.sources.Spectrum;
import thudbook.yardstick.RandomSounds;

/**
 * Property: every time of a level is where its definition says it is, looked at densely: the level
 * at a first crossing is the wanted one, and below it at all times before; likewise after a last
 * one. Motions and spectra are taken as they are, so that this is quick; others hold them against
 * an integrator and plain sums.
 */
class DenseSamplingTest {
  private static final int SOUNDS_PER_SEED = 8;
  private static final double SAME = 1e-7;

  /** A sound as a function of time. */
  private static final class Dense {
    private final Sound sound;
    private final Spectrum spectrum;
    private final List<Motion> motions = new ArrayList<>();
    private final List<Double> times = new ArrayList<>();

    Dense(Sound sound, Strikes strikes) {
      this.sound = sound;
      spectrum = Spectrum.of(sound.source());
      for (int i = 0; i < sound.stages().size(); i++) {
        Stage stage = sound.stages().get(i);
        ControlVoltage voltage = ControlVoltage.of(sound.envelopeOf(i), strikes, stage.drive());
        Motion motion = Motion.of(voltage, stage.channel());
        motions.add(motion);
        motion.pieces().forEach(this::look);
      }
    }

    private void look(MotionPiece piece) {
      double length = Math.min(piece.end() - piece.start(), 60 * piece.longestTimeConstant());
      for (int i = 0; i < 60; i++) {
        times.add(piece.start() + length * i / 60);
        times.add(piece.start() + length * Math.pow(10, i / 10.0 - 6));
      }
    }

    double openness(int stage, double time) {
      return motions.get(stage).openness(time);
    }

    private double level(double[] openness) {
      double level = 1;
      List<Double> poles = new ArrayList<>();
      for (int i = 0; i < openness.length; i++) {
        Channel channel = sound.stages().get(i).channel();
        level *= channel.level(openness[i]);
        Filter filter = channel.response().filter().orElse(null);
        if (filter != null) {
          double cutoff = channel.cutoffHertz(openness[i]);
          poles.add(cutoff);
          if (filter.poles() > 1) {
            poles.add(filter.spread() * cutoff);
          }
        }
      }
      return level * Math.sqrt(spectrum.passedShare(poles.stream().mapToDouble(p -> p).toArray()));
    }

    double level(double time) {
      double[] openness = new double[motions.size()];
      for (int i = 0; i < openness.length; i++) {
        openness[i] = openness(i, time);
      }
      return level(openness);
    }

    double floor() {
      return level(motions.stream().mapToDouble(Motion::finalOpenness).toArray());
    }

    void below(String what, double level, double from, double to) {
      for (double time : times) {
        if (time > from + 1e-9 && time < to - 1e-9) {
          assertThat(level(time)).as(what + " at " + time).isLessThan(level * (1 + SAME));
        }
      }
    }

    double largest(double from, double to) {
      double largest = level(from);
      for (double time : times) {
        largest = time >= from && time < to ? Math.max(largest, level(time)) : largest;
      }
      return largest;
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {621, 622, 623})
  void everyTimeIsWhereItsDefinitionSays(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    for (int i = 0; i < SOUNDS_PER_SEED; i++) {
      Sound sound = sounds.next();
      String what = "seed " + seed + " sound " + i + " ";
      Dense dense = new Dense(sound, null);
      Map<Metric, Double> values = Predictor.predict(sound).metrics().values();
      double top = Math.pow(10, values.get(Metric.PEAK_DB) / 20);
      double infinity = Double.POSITIVE_INFINITY;
      dense.below(what + "top", top, -1, infinity);
      assertThat(Math.max(dense.largest(0, infinity), dense.floor()))
          .as(what)
          .isCloseTo(top, within(1e-3 * top));
      assertThat(values.get(Metric.FLOOR_DB))
          .isCloseTo(20 * Math.log10(dense.floor() / top), within(1e-9));
      dense.below(what + "peakTime", top * (1 - 1e-12), -1, values.get(Metric.PEAK_TIME));
      checkCrossings(what, dense, values, top);
      checkShape(what, dense, Predictor.predict(sound).shape(), top);
      int last = sound.stages().size() - 1;
      double peak = dense.motions.get(last).finalOpenness();
      for (double time : dense.times) {
        peak = Math.max(peak, dense.openness(last, time));
      }
      assertThat(values.get(Metric.PEAK_OPENNESS)).as(what).isBetween(peak - 1e-12, peak + 1e-3);
    }
  }

  private static void checkCrossings(
      String what, Dense dense, Map<Metric, Double> values, double top) {
    double base = dense.level(-1);
    assertThat(values.containsKey(Metric.ONSET)).as(what).isEqualTo(top >= 1.0116 * base);
    if (!values.containsKey(Metric.ONSET)) {
      return;
    }
    double ten = base + 0.1 * (top - base);
    double ninety = base + 0.9 * (top - base);
    double onset = values.get(Metric.ONSET);
    double reached = onset + values.get(Metric.ATTACK);
    assertThat(dense.level(onset)).as(what + "onset").isCloseTo(ten, within(SAME * ten));
    assertThat(dense.level(reached)).as(what + "attack").isCloseTo(ninety, within(SAME * ninety));
    dense.below(what + "onset", ten, -1, onset);
    dense.below(what + "attack", ninety, -1, reached);
    assertThat(values.containsKey(Metric.HOLD)).as(what).isEqualTo(dense.floor() < ninety);
    if (!values.containsKey(Metric.HOLD)) {
      return;
    }
    double leaves = reached + values.get(Metric.HOLD);
    assertThat(dense.level(leaves)).as(what + "hold").isCloseTo(ninety, within(SAME * ninety));
    dense.below(what + "hold", ninety, leaves, Double.POSITIVE_INFINITY);
    Map<Metric, Double> falls =
        Map.of(Metric.RELEASE_20, 0.1, Metric.RELEASE_40, 0.01, Metric.RELEASE_60, 0.001);
    falls.forEach(
        (metric, share) -> {
          double level = top * share;
          assertThat(values.containsKey(metric)).as(what).isEqualTo(dense.floor() < level);
          if (values.containsKey(metric)) {
            double time = leaves + values.get(metric);
            assertThat(dense.level(time)).as(what + metric).isCloseTo(level, within(SAME * level));
            dense.below(what + metric, level, time, Double.POSITIVE_INFINITY);
          }
        });
  }

  private static void checkShape(String what, Dense dense, SmallShape shape, double top) {
    for (int k = 0; k < 48; k++) {
      double level = 20 * Math.log10(dense.level(0.5e-3 * Math.pow(8000, k / 47.0)) / top);
      assertThat(shape.levelsDb().get(k))
          .as(what + "point " + k)
          .isCloseTo(Math.max(-60, level), within(1e-7));
    }
  }

  /** Peaks of a train, and dips between them, and the lines of its curve. */
  @ParameterizedTest
  @ValueSource(longs = {631, 632})
  void strikesAndCurvesAreThoseOfTheLevel(long seed) {
    RandomSounds sounds = RandomSounds.usual(seed);
    int trains = 0;
    while (trains < 5) {
      Sound sound = sounds.next();
      if (sound.strikes() == null || sound.strikes().seconds().size() > 8) {
        continue;
      }
      trains++;
      String what = "seed " + seed + " train " + trains + " ";
      Dense dense = new Dense(sound, sound.strikes());
      Prediction prediction = Predictor.predictWithCurve(sound);
      List<Double> at = sound.strikes().seconds();
      for (int k = 0; k < at.size(); k++) {
        boolean last = k + 1 == at.size();
        double peak = Math.pow(10, prediction.strikes().get(k).peakDb() / 20);
        double to = last ? Double.POSITIVE_INFINITY : at.get(k + 1);
        dense.below(what, peak, at.get(k), to);
        double largest = dense.largest(at.get(k), to);
        largest = Math.max(largest, last ? dense.floor() : dense.level(to));
        assertThat(largest).as(what).isCloseTo(peak, within(1e-3 * peak));
      }
      assertCurve(what, dense, prediction.curve());
    }
  }

  private static void assertCurve(String what, Dense dense, Curve curve) {
    List<CurvePoint> points = curve.points();
    double top = points.stream().mapToDouble(CurvePoint::outputDb).max().orElseThrow();
    for (int i = 0; i < points.size(); i++) {
      CurvePoint point = points.get(i);
      double db = 20 * Math.log10(dense.level(point.seconds()));
      assertThat(point.outputDb()).as(what).isCloseTo(db, within(1e-7));
      for (int s = 0; s < point.stages().size(); s++) {
        assertThat(point.stages().get(s).openness())
            .isCloseTo(dense.openness(s, point.seconds()), within(1e-12));
      }
      for (double share = 0.1; i > 0 && share < 0.95; share += 0.1) {
        CurvePoint before = points.get(i - 1);
        double time = before.seconds() + share * (point.seconds() - before.seconds());
        double exact = 20 * Math.log10(dense.level(time));
        double line = before.outputDb() + share * (point.outputDb() - before.outputDb());
        if (exact > top - 59.8) {
          assertThat(Math.abs(exact - line)).as(what).isLessThan(curve.worstDb() + 0.05);
        }
      }
    }
  }
}
