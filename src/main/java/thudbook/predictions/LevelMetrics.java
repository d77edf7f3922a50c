package thudbook.predictions;

import static thudbook.predictions.Metric.ATTACK;
import static thudbook.predictions.Metric.BRIGHTNESS_AT_20;
import static thudbook.predictions.Metric.BRIGHTNESS_PEAK;
import static thudbook.predictions.Metric.FLOOR_DB;
import static thudbook.predictions.Metric.HOLD;
import static thudbook.predictions.Metric.ONSET;
import static thudbook.predictions.Metric.PEAK_DB;
import static thudbook.predictions.Metric.PEAK_TIME;
import static thudbook.predictions.Metric.RELEASE_20;
import static thudbook.predictions.Metric.RELEASE_40;
import static thudbook.predictions.Metric.RELEASE_60;

import java.util.Map;
import java.util.OptionalDouble;

/** The metrics of the lone strike that follow from its output level alone. */
final class LevelMetrics {
  /** A top that is not 0.1 dB above what was there before is no strike: 10^(0.1/20). */
  private static final double HARDLY_ANY_RISE = 1.0116;

  private final Trace trace;
  private final double base;
  private final double top;

  LevelMetrics(Trace trace) {
    this.trace = trace;
    base = trace.baseLevel();
    top = Math.max(base, trace.top());
  }

  /** The largest level. */
  double top() {
    return top;
  }

  /** Whether there is a strike to speak of. */
  private boolean strikes() {
    return top >= HARDLY_ANY_RISE * base;
  }

  double peakTime() {
    return trace.firstAtLeast(top * (1 - 1e-12), 0).orElse(0);
  }

  private double share(double ofSpan) {
    return base + ofSpan * (top - base);
  }

  OptionalDouble onset() {
    return strikes() ? trace.firstAtLeast(share(0.1), 0) : OptionalDouble.empty();
  }

  private OptionalDouble reaches90() {
    return strikes() ? trace.firstAtLeast(share(0.9), 0) : OptionalDouble.empty();
  }

  private OptionalDouble leaves90() {
    return strikes() ? trace.lastFall(share(0.9)) : OptionalDouble.empty();
  }

  /** The last fall to so many decibels below the top. */
  OptionalDouble lastFall(double decibelsBelowTop) {
    return strikes()
        ? trace.lastFall(top * Math.pow(10, -decibelsBelowTop / 20))
        : OptionalDouble.empty();
  }

  private static OptionalDouble between(OptionalDouble from, OptionalDouble to) {
    return from.isPresent() && to.isPresent()
        ? OptionalDouble.of(to.getAsDouble() - from.getAsDouble())
        : OptionalDouble.empty();
  }

  /** One metric, if it is among these and exists. */
  OptionalDouble get(Metric metric) {
    return switch (metric) {
      case PEAK_DB -> OptionalDouble.of(decibels(top));
      case PEAK_TIME -> OptionalDouble.of(peakTime());
      case ONSET -> onset();
      case ATTACK -> between(onset(), reaches90());
      case HOLD -> between(reaches90(), leaves90());
      case RELEASE_20 -> between(leaves90(), lastFall(20));
      case RELEASE_40 -> between(leaves90(), lastFall(40));
      case RELEASE_60 -> between(leaves90(), lastFall(60));
      case FLOOR_DB -> OptionalDouble.of(decibels(trace.finalLevel() / top));
      case BRIGHTNESS_PEAK -> OptionalDouble.of(brightness(peakTime()));
      case BRIGHTNESS_AT_20 -> brightnessAt20();
      default -> OptionalDouble.empty();
    };
  }

  private OptionalDouble brightnessAt20() {
    OptionalDouble time = lastFall(20);
    return time.isPresent() && leaves90().isPresent()
        ? OptionalDouble.of(brightness(time.getAsDouble()))
        : OptionalDouble.empty();
  }

  private double brightness(double seconds) {
    return trace.chain().brightnessHertz(trace.opennessAt(seconds));
  }

  /** All of them, each crossing found once. */
  void putAll(Map<Metric, Double> into) {
    double peakTime = peakTime();
    into.put(PEAK_DB, decibels(top));
    into.put(PEAK_TIME, peakTime);
    into.put(FLOOR_DB, decibels(trace.finalLevel() / top));
    into.put(BRIGHTNESS_PEAK, brightness(peakTime));
    OptionalDouble onset = onset();
    OptionalDouble reaches90 = reaches90();
    OptionalDouble leaves90 = leaves90();
    OptionalDouble at20 = lastFall(20);
    put(into, ONSET, onset);
    put(into, ATTACK, between(onset, reaches90));
    put(into, HOLD, between(reaches90, leaves90));
    put(into, RELEASE_20, between(leaves90, at20));
    put(into, RELEASE_40, between(leaves90, lastFall(40)));
    put(into, RELEASE_60, between(leaves90, lastFall(60)));
    if (leaves90.isPresent() && at20.isPresent()) {
      into.put(BRIGHTNESS_AT_20, brightness(at20.getAsDouble()));
    }
  }

  private static void put(Map<Metric, Double> into, Metric metric, OptionalDouble value) {
    if (value.isPresent()) {
      into.put(metric, value.getAsDouble());
    }
  }

  /** 20 log₁₀ of a level. */
  static double decibels(double level) {
    return 20 * Math.log10(level);
  }
}
