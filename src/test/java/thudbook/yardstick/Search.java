package thudbook.yardstick;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** Crossings and extremes of a function that has been looked at on a grid of times. */
final class Search {
  private final DoubleUnaryOperator function;
  private final double[] times;
  private final double[] values;

  Search(DoubleUnaryOperator function, double... times) {
    this.function = function;
    this.times = times;
    this.values = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      values[i] = function.applyAsDouble(times[i]);
    }
  }

  /** The first time at which the function is at or above a level. */
  OptionalDouble firstReaching(double level) {
    for (int i = 0; i < times.length; i++) {
      if (values[i] >= level) {
        return OptionalDouble.of(i == 0 ? times[0] : bisect(level, times[i - 1], times[i]));
      }
    }
    return OptionalDouble.empty();
  }

  /** The last time at which the function falls through a level. */
  OptionalDouble lastFall(double level) {
    for (int i = times.length - 2; i >= 0; i--) {
      if (values[i] >= level) {
        return OptionalDouble.of(bisect(level, times[i], times[i + 1]));
      }
    }
    return OptionalDouble.empty();
  }

  private double bisect(double level, double from, double to) {
    double low = from;
    double high = to;
    boolean above = function.applyAsDouble(low) >= level;
    for (int i = 0; i < 100; i++) {
      double middle = low + (high - low) / 2;
      if (function.applyAsDouble(middle) >= level == above) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** The largest value on the grid and around its three best local maxima. */
  double largest() {
    return function.applyAsDouble(timeOfLargest());
  }

  /** Where the largest value is, by golden section around the best points of the grid. */
  double timeOfLargest() {
    double best = 0;
    for (double value : values) {
      best = Math.max(best, Math.abs(value));
    }
    double bestTime = times[0];
    double bestValue = Double.NEGATIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      most = Math.max(most, value);
    }
    for (int i = 0; i < times.length; i++) {
      boolean peak =
          (i == 0 || values[i] >= values[i - 1])
              && (i == times.length - 1 || values[i] > values[i + 1]);
      if (peak && values[i] >= most - 0.02 * best) {
        double t = golden(times[Math.max(0, i - 1)], times[Math.min(times.length - 1, i + 1)]);
        double value = function.applyAsDouble(t);
        if (values[i] >= value) {
          t = times[i];
          value = values[i];
        }
        if (value > bestValue) {
          bestValue = value;
          bestTime = t;
        }
      }
    }
    return bestTime;
  }

  private double golden(double from, double to) {
    double ratio = (Math.sqrt(5) - 1) / 2;
    double a = from;
    double b = to;
    for (int i = 0; i < 60; i++) {
      double x = b - ratio * (b - a);
      double y = a + ratio * (b - a);
      if (function.applyAsDouble(x) < function.applyAsDouble(y)) {
        a = x;
      } else {
        b = y;
      }
    }
    return a + (b - a) / 2;
  }
}
