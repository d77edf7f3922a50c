package thudbook.yardstick;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import thudbook.predictions.Metric;
import thudbook.predictions.Sound;

/** The numbers of the output: thump, headroom and clipping over the whole train. */
final class BruteForceOutput {
  private final Sound sound;
  private final IntegratedChain whole;
  private final double top;
  private final double[] times;

  BruteForceOutput(Sound sound, IntegratedChain whole, double top) {
    this.sound = sound;
    this.whole = whole;
    this.top = top;
    this.times = whole.times();
  }

  Map<Metric, Double> values() {
    Map<Metric, Double> values = new EnumMap<>(Metric.class);
    double thump = thumpPeak();
    values.put(Metric.THUMP_PEAK, thump);
    if (thump > 0) {
      double tone = sound.source().levelVolts() * top;
      values.put(Metric.THUMP_TO_TONE, BruteForce.decibels(thump / tone));
    }
    headroom(values, Metric.HEADROOM_POSITIVE, 1);
    headroom(values, Metric.HEADROOM_NEGATIVE, -1);
    double clipped = 0;
    for (int i = 1; i <= whole.stages(); i++) {
      int stages = i;
      clipped = Math.max(clipped, largest(t -> clippedShare(stages, t)));
    }
    values.put(Metric.CLIPPED_SHARE, clipped);
    return values;
  }

  private double largest(DoubleUnaryOperator function) {
    double ends =
        Math.max(
            function.applyAsDouble(IntegratedChain.REST),
            function.applyAsDouble(IntegratedChain.SETTLED));
    return Math.max(ends, new Search(function, times).largest());
  }

  private double offset(double t) {
    return whole.d(whole.stages(), t);
  }

  /** The high-pass v′ = −ωv + d′ as v = d − w with w′ = ω(d − w), w(0) = d(0), integrated. */
  private double thumpPeak() {
    if (sound.couplingHertz() == 0) {
      return largest(t -> Math.abs(offset(t)));
    }
    if (sound.stages().stream().allMatch(stage -> stage.channel().output().bleedVolts() == 0)) {
      return 0;
    }
    double tau = 1 / (2 * Math.PI * sound.couplingHertz());
    IntegratedCell slow = new IntegratedCell(tau, tau, offset(0), 1e-10);
    for (int i = 0; i + 1 < times.length; i++) {
      slow.follow(this::offset, times[i], times[i + 1]);
    }
    return new Search(t -> Math.abs(offset(t) - slow.at(t)), times).largest();
  }

  private void headroom(Map<Metric, Double> values, Metric metric, int sign) {
    double worst = Double.NEGATIVE_INFINITY;
    for (int i = 1; i <= whole.stages(); i++) {
      int stages = i;
      double rail = sound.stages().get(i - 1).channel().output().railVolts();
      if (largest(t -> sign * whole.d(stages, t)) >= rail) {
        return;
      }
      worst =
          Math.max(
              worst,
              largest(
                  t -> BruteForce.decibels(tone(stages, t) / (rail - sign * whole.d(stages, t)))));
    }
    values.put(metric, -worst);
  }

  private double tone(int stages, double t) {
    return sound.source().levelVolts() * whole.h(stages, t);
  }

  private double clippedShare(int stages, double t) {
    double rail = sound.stages().get(stages - 1).channel().output().railVolts();
    double tone = tone(stages, t);
    double offset = whole.d(stages, t);
    return share((rail - offset) / tone) + share((rail + offset) / tone);
  }

  private static double share(double x) {
    return Math.acos(Math.max(-1, Math.min(1, x))) / Math.PI;
  }
}
