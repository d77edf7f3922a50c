package thudbook.yardstick;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;
import thudbook.predictions.Sound;
import thudbook.predictions.StageMetrics;
import thudbook.predictions.StrikeMetrics;
import thudbook.sources.Source;
import thudbook.yardstick.LiteralCrossings.Interval;

/**
 * Every number of a sound by its definition: integrate, look densely, bisect. The check and the
 * yardstick of {@link thudbook.predictions.Predictor}, thousands of times slower.
 */
public final class BruteForce {
  private final Sound sound;
  private final LiteralSpectrum spectrum;
  private final IntegratedChain lone;
  private final IntegratedChain whole;
  private final List<StageMetrics> stages = new ArrayList<>();
  private final List<StrikeMetrics> strikes = new ArrayList<>();
  private final Map<Metric, Double> values = new EnumMap<>(Metric.class);
  private final double top;

  /** Measures a sound; {@code tolerance} is the integrator's. */
  public BruteForce(Sound sound, double tolerance) {
    this.sound = sound;
    spectrum = new LiteralSpectrum(sound.source());
    lone = new IntegratedChain(sound, spectrum, null, tolerance);
    whole =
        sound.strikes() == null
            ? lone
            : new IntegratedChain(sound, spectrum, sound.strikes(), tolerance);
    Search h = new Search(lone::h, lone.times());
    top = Math.max(h.largest(), lone.h(IntegratedChain.SETTLED));
    times(h);
    for (int i = 0; i < lone.stages(); i++) {
      stages.add(stage(i));
    }
    headline();
    values.putAll(new BruteForceOutput(sound, whole, top).values());
    if (sound.strikes() != null) {
      strikes();
    }
  }

  /** The metrics; those without a value are absent. */
  public Metrics metrics() {
    return new Metrics(values, reach(), envelopeOnly());
  }

  /** Per stage. */
  public List<StageMetrics> stages() {
    return List.copyOf(stages);
  }

  /** Per strike of a train. */
  public List<StrikeMetrics> perStrike() {
    return List.copyOf(strikes);
  }

  /** h of the lone strike at any time up to the horizon. */
  public double loneLevel(double seconds) {
    return lone.h(seconds);
  }

  /** h of the whole train at any time up to the horizon. */
  public double level(double seconds) {
    return whole.h(seconds);
  }

  /** Times at which to compare the whole train, dense in every piece. */
  public double[] times() {
    return whole.times();
  }

  private void times(Search h) {
    double base = lone.h(IntegratedChain.REST);
    double floor = lone.h(IntegratedChain.SETTLED);
    values.put(Metric.PEAK_DB, decibels(top));
    double peakTime = h.firstReaching(top * (1 - 1e-10)).orElse(h.timeOfLargest());
    values.put(Metric.PEAK_TIME, peakTime);
    values.put(Metric.BRIGHTNESS_PEAK, lone.brightness(peakTime));
    values.put(Metric.FLOOR_DB, decibels(floor / top));
    if (top < 1.0116 * base) {
      return;
    }
    double ten = h.firstReaching(base + 0.1 * (top - base)).orElseThrow();
    double ninetyLevel = base + 0.9 * (top - base);
    double ninety = h.firstReaching(ninetyLevel).orElseThrow();
    values.put(Metric.ONSET, ten);
    values.put(Metric.ATTACK, ninety - ten);
    if (floor >= ninetyLevel) {
      return;
    }
    double falls = h.lastFall(ninetyLevel).orElseThrow();
    values.put(Metric.HOLD, falls - ninety);
    release(h, Metric.RELEASE_20, 20, falls, floor);
    release(h, Metric.RELEASE_40, 40, falls, floor);
    release(h, Metric.RELEASE_60, 60, falls, floor);
  }

  private void release(Search h, Metric metric, double below, double falls, double floor) {
    double level = top * Math.pow(10, -below / 20);
    if (floor >= level) {
      return;
    }
    OptionalDouble time = h.lastFall(level);
    values.put(metric, time.orElseThrow() - falls);
    if (metric == Metric.RELEASE_20) {
      values.put(Metric.BRIGHTNESS_AT_20, lone.brightness(time.orElseThrow()));
    }
  }

  private StageMetrics stage(int i) {
    Search openness = new Search(t -> lone.openness(i, t), lone.times());
    double peak = Math.max(openness.largest(), lone.openness(i, IntegratedChain.SETTLED));
    var transfer = sound.stages().get(i).channel().transfer();
    return new LiteralCrossings(lone.voltage(i))
        .stage(sound.envelopeOf(i), transfer.thresholdVolts(), transfer.ceilingVolts(), peak);
  }

  private void headline() {
    boolean silent = stages.stream().anyMatch(s -> s.reach() == Reach.SILENT);
    if (!silent) {
      values.put(
          Metric.DEAD_TIME,
          stages.stream().mapToDouble(StageMetrics::deadTime).max().orElseThrow());
    }
    double flat = flatTime();
    if (!Double.isInfinite(flat)) {
      values.put(Metric.FLAT_TIME, flat);
    }
    StageMetrics first = null;
    for (StageMetrics stage : stages) {
      boolean earlier = stage.letGo() != null && (first == null || stage.letGo() < first.letGo());
      first = earlier ? stage : first;
    }
    if (first != null) {
      values.put(Metric.LET_GO, first.letGo());
      if (first.ignoredShare() != null) {
        values.put(Metric.IGNORED_SHARE, first.ignoredShare());
      }
    } else if (stages.stream().anyMatch(s -> s.ignoredShare() != null)) {
      values.put(Metric.IGNORED_SHARE, silent ? 1.0 : 0.0);
    }
    values.put(Metric.PEAK_OPENNESS, stages.get(stages.size() - 1).peakOpenness());
  }

  /** The time in which all stages are at their ceilings. */
  private double flatTime() {
    List<Interval> all = List.of(new Interval(0, Double.POSITIVE_INFINITY));
    for (int i = 0; i < stages.size(); i++) {
      double ceiling = sound.stages().get(i).channel().transfer().ceilingVolts();
      List<Interval> own = new LiteralCrossings(lone.voltage(i)).above(ceiling, true);
      List<Interval> both = new ArrayList<>();
      for (Interval a : all) {
        for (Interval b : own) {
          double start = Math.max(a.start(), b.start());
          double end = Math.min(a.end(), b.end());
          if (start < end) {
            both.add(new Interval(start, end));
          }
        }
      }
      all = both;
    }
    return all.stream().mapToDouble(Interval::length).sum();
  }

  private Reach reach() {
    return stages.stream().map(StageMetrics::reach).min(Reach::compareTo).orElseThrow();
  }

  private Set<Metric> envelopeOnly() {
    if (sound.source() instanceof Source.Noise) {
      return EnumSet.noneOf(Metric.class);
    }
    double shortest = 2 / spectrum.lowestStrongHertz();
    Set<Metric> only = EnumSet.noneOf(Metric.class);
    for (Metric metric :
        List.of(
            Metric.ATTACK, Metric.HOLD, Metric.RELEASE_20, Metric.RELEASE_40, Metric.RELEASE_60)) {
      if (values.getOrDefault(metric, Double.POSITIVE_INFINITY) < shortest) {
        only.add(metric);
      }
    }
    return only;
  }

  private void strikes() {
    List<Double> at = sound.strikes().seconds();
    List<Double> peaks = new ArrayList<>();
    List<Double> peakTimes = new ArrayList<>();
    for (int k = 0; k < at.size(); k++) {
      double end = k + 1 < at.size() ? at.get(k + 1) : Double.POSITIVE_INFINITY;
      Search h = new Search(whole::h, between(at.get(k), end));
      double settled = Double.isInfinite(end) ? whole.h(IntegratedChain.SETTLED) : 0;
      peaks.add(Math.max(h.largest(), settled));
      peakTimes.add(h.firstReaching(peaks.get(k) * (1 - 1e-10)).orElse(h.timeOfLargest()));
    }
    for (int k = 0; k < at.size(); k++) {
      Boolean separated = null;
      if (k + 1 < at.size()) {
        DoubleUnaryOperator upsideDown = t -> -whole.h(t);
        double least =
            -new Search(upsideDown, between(peakTimes.get(k), peakTimes.get(k + 1))).largest();
        separated = least <= Math.min(peaks.get(k), peaks.get(k + 1)) * Math.pow(10, -0.5);
      }
      strikes.add(new StrikeMetrics(decibels(peaks.get(k)), separated));
    }
    values.put(Metric.BUILD_UP, strikes.get(strikes.size() - 1).peakDb() - strikes.get(0).peakDb());
  }

  private double[] between(double from, double to) {
    double end = Math.min(to, whole.horizon());
    List<Double> times = new ArrayList<>(List.of(from));
    for (double t : whole.times()) {
      if (t > from && t < end) {
        times.add(t);
      }
    }
    times.add(Math.max(from, end));
    return times.stream().mapToDouble(t -> t).toArray();
  }

  static double decibels(double ratio) {
    return 20 * Math.log10(ratio);
  }
}
