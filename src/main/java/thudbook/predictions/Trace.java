package thudbook.predictions;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import thudbook.gates.Motion;

/**
 * The output level h(t) of a chain of moving stages, cut into spans on which it is monotone, so
 * that its extrema and crossings can be told with certainty.
 *
 * <p>Where all cells of all stages go the same way, so does the level. Where they disagree, the
 * level is a sum of a few exponentials; it is looked at on a grid that is even in the logarithm of
 * time, on which such sums change slowly, and each extremum found there is refined.
 */
final class Trace {
  private final Chain chain;
  private final List<Motion> motions;
  private final double[] openness;

  private final Intervals intervals;
  private final List<Span> spans = new ArrayList<>();
  private final double baseLevel;
  private final double finalLevel;

  /** A stretch on which the level is monotone: from the time and level before it to its own. */
  private record Span(int interval, double end, double endLevel) {}

  Trace(Chain chain, List<Motion> motions) {
    this.chain = chain;
    this.motions = motions;
    openness = new double[motions.size()];
    intervals = new Intervals(motions);
    for (int j = 0; j < openness.length; j++) {
      openness[j] = motions.get(j).restOpenness();
    }
    baseLevel = chain.level(openness);
    for (int j = 0; j < openness.length; j++) {
      openness[j] = motions.get(j).finalOpenness();
    }
    finalLevel = chain.level(openness);
    cutIntoSpans();
  }

  private void cutIntoSpans() {
    double level = levelIn(0, 0);
    for (int k = 0; k < intervals.count(); k++) {
      double start = intervals.start(k);
      double end = intervals.end(k);
      if (intervals.isMixed(k)) {
        level = addMixed(k, level);
      } else {
        if (k + 1 == intervals.count()) {
          // The endless piece, in doubling steps: a bracket near the crossing is found sooner.
          for (double step = intervals.shortestTimeConstant(k); start + step < end; step *= 2) {
            level = add(k, start + step);
          }
        }
        level = add(k, end);
      }
    }
  }

  /** Adds the spans of an interval in which cells go both ways; answers the level at its end. */
  private double addMixed(int k, double startLevel) {
    double[] times = intervals.places(k);
    int steps = times.length - 2;
    double[] levels = new double[times.length];
    levels[0] = motions.size() == 1 ? opennessIn(k, times[0])[0] : startLevel;
    for (int i = 1; i < times.length; i++) {
      levels[i] = measure(k, times[i]);
    }
    for (int i = 1; i <= steps; i++) {
      double before = levels[i] - levels[i - 1];
      double after = levels[i + 1] - levels[i];
      if (before * after < 0) {
        double sign = Math.signum(before);
        times[i] = Roots.maximum(times[i - 1], times[i + 1], t -> sign * measure(k, t));
        levels[i] = measure(k, times[i]);
      }
    }
    for (int i = 1; i < times.length; i++) {
      boolean turns =
          i < steps + 1 && (levels[i] - levels[i - 1]) * (levels[i + 1] - levels[i]) <= 0;
      if (turns || i == steps + 1) {
        add(k, times[i]);
      }
    }
    return spans.get(spans.size() - 1).endLevel();
  }

  /** What turns where the level turns: of one stage its openness, which is quicker to tell. */
  private double measure(int interval, double seconds) {
    return motions.size() == 1 ? opennessIn(interval, seconds)[0] : levelIn(interval, seconds);
  }

  private double add(int interval, double end) {
    double level = levelIn(interval, end);
    spans.add(new Span(interval, end, level));
    return level;
  }

  private double levelIn(int interval, double seconds) {
    return chain.level(opennessIn(interval, seconds));
  }

  private double[] opennessIn(int interval, double seconds) {
    intervals.openness(interval, seconds, openness);
    return openness;
  }

  /** The offset behind all stages, in volts, at a time of the interval from a corner on. */
  double offsetIn(int corner, double seconds) {
    return offsetIn(corner, seconds, motions.size());
  }

  /** The offset behind the first so many stages, as {@link #offsetIn(int, double)}. */
  double offsetIn(int corner, double seconds, int stages) {
    return chain.offsetVolts(opennessIn(corner, seconds), stages);
  }

  /** The stretches of time between two corners. */
  Intervals intervals() {
    return intervals;
  }

  /** The stages that the level follows from. */
  Chain chain() {
    return chain;
  }

  /** The motions of the stages. */
  List<Motion> motions() {
    return motions;
  }

  /** The level before the first strike. */
  double baseLevel() {
    return baseLevel;
  }

  /** The level that is left in the end. */
  double finalLevel() {
    return finalLevel;
  }

  /** The time after which nothing happens any more, in seconds. */
  double horizonSeconds() {
    return intervals.horizonSeconds();
  }

  /** The corners of all stages, from 0. */
  double[] corners() {
    return intervals.corners();
  }

  /** The ends of the monotone spans, from 0 to the horizon. */
  double[] monotoneTimes() {
    double[] times = new double[spans.size() + 1];
    for (int k = 0; k < spans.size(); k++) {
      times[k + 1] = spans.get(k).end();
    }
    return times;
  }

  /** The opennesses of all stages at a time; the array is reused by the next call. */
  double[] opennessAt(double seconds) {
    if (seconds < 0) {
      for (int j = 0; j < openness.length; j++) {
        openness[j] = motions.get(j).restOpenness();
      }
      return openness;
    }
    return opennessIn(intervals.at(seconds), seconds);
  }

  /** The level at a time. */
  double level(double seconds) {
    return seconds < 0 ? baseLevel : chain.level(opennessAt(seconds));
  }

  /** The largest level from the strike on. */
  double top() {
    return top(0, Double.POSITIVE_INFINITY);
  }

  /** The largest level between two times; the second may be infinite. */
  double top(double from, double to) {
    double top = Math.max(level(from), to < intervals.horizonSeconds() ? level(to) : finalLevel);
    for (Span span : spans) {
      if (span.end() > from && span.end() < to) {
        top = Math.max(top, span.endLevel());
      }
    }
    return top;
  }

  /** The smallest level between two finite times. */
  double bottom(double from, double to) {
    double bottom = Math.min(level(from), level(to));
    for (Span span : spans) {
      if (span.end() > from && span.end() < to) {
        bottom = Math.min(bottom, span.endLevel());
      }
    }
    return bottom;
  }

  /** The first time from {@code from} on at which the level is at least this. */
  OptionalDouble firstAtLeast(double wanted, double from) {
    if (level(from) >= wanted) {
      return OptionalDouble.of(from);
    }
    double start = 0;
    for (Span span : spans) {
      if (span.end() > from && span.endLevel() >= wanted) {
        double begin = Math.max(start, from);
        return OptionalDouble.of(
            Roots.between(begin, span.end(), t -> levelIn(span.interval(), t) / wanted - 1));
      }
      start = span.end();
    }
    return OptionalDouble.empty();
  }

  /** The last time at which the level falls through this one; absent if it does not stay below. */
  OptionalDouble lastFall(double wanted) {
    if (finalLevel >= wanted) {
      return OptionalDouble.empty();
    }
    return lastChange(wanted, true);
  }

  /** The last time at which the level rises through this one; absent if it does not stay above. */
  OptionalDouble lastRise(double wanted) {
    if (finalLevel <= wanted) {
      return OptionalDouble.empty();
    }
    return lastChange(wanted, false);
  }

  private OptionalDouble lastChange(double wanted, boolean fall) {
    for (int k = spans.size() - 1; k >= 0; k--) {
      Span span = spans.get(k);
      double before = k == 0 ? level(0) : spans.get(k - 1).endLevel();
      if (fall ? before >= wanted : before <= wanted) {
        double start = k == 0 ? 0 : spans.get(k - 1).end();
        return OptionalDouble.of(
            Roots.between(start, span.end(), inDecibels(span.interval(), wanted)));
      }
    }
    return OptionalDouble.empty();
  }

  /** ln(h/wanted): a falling level is closer to a line in decibels. */
  private DoubleUnaryOperator inDecibels(int interval, double wanted) {
    return t -> Math.log(levelIn(interval, t) / wanted);
  }
}
