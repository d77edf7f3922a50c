package thudbook.predictions;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * The largest value of a smooth function over a grid of times, refined between the grid's points.
 */
final class Scan {
  /** How near the edge of the grid a function is asked whether it still rises. */
  private static final double NEAR_EDGE = 1e-5;

  /** Ratio of neighbouring steps of an interval between two corners. */
  private static final double STEP = Math.sqrt(Math.sqrt(2));

  /** How close to its edges, as a share of its first step, an interval has one place more. */
  private static final double BESIDE_EDGE = 1e-3;

  private Scan() {}

  /**
   * The largest value on [first, last] of the grid.
   *
   * @param grid rising places, close enough that the function has one maximum around its best one
   */
  static double largest(double[] grid, DoubleUnaryOperator function) {
    double[] values = new double[grid.length];
    for (int k = 0; k < grid.length; k++) {
      values[k] = function.applyAsDouble(grid[k]);
    }
    return largest(grid, values, function);
  }

  /** As {@link #largest(double[], DoubleUnaryOperator)}, with its values on the grid at hand. */
  static double largest(double[] grid, double[] values, DoubleUnaryOperator function) {
    int best = 0;
    for (int k = 1; k < grid.length; k++) {
      if (values[k] > values[best]) {
        best = k;
      }
    }
    double largest = values[best];
    if (risesTowardsEdge(grid, best, largest, function)) {
      return largest;
    }
    double low = grid[Math.max(0, best - 1)];
    double high = grid[Math.min(grid.length - 1, best + 1)];
    double refined = Roots.maximum(low, high, function);
    return Math.max(largest, function.applyAsDouble(refined));
  }

  /** Whether the best place is an end of the grid, with the function rising up to it. */
  private static boolean risesTowardsEdge(
      double[] grid, int best, double largest, DoubleUnaryOperator function) {
    int neighbour = best == 0 ? 1 : best == grid.length - 1 ? best - 1 : -1;
    if (neighbour < 0) {
      return false;
    }
    double inside = grid[best] + (grid[neighbour] - grid[best]) * NEAR_EDGE;
    return function.applyAsDouble(inside) <= largest;
  }

  /** A grid with so many equal steps between each two of the given places. */
  static double[] refine(double[] places, int steps) {
    double[] grid = new double[(places.length - 1) * steps + 1];
    for (int k = 0; k + 1 < places.length; k++) {
      for (int i = 0; i < steps; i++) {
        grid[k * steps + i] = places[k] + (places[k + 1] - places[k]) * i / steps;
      }
    }
    grid[grid.length - 1] = places[places.length - 1];
    return grid;
  }

  /**
   * A grid from a corner to the next, even in the logarithm of time, on which sums of exponentials
   * change slowly. A place close to either end shows a turn in the first or last step.
   *
   * @param shortest the shortest time constant at work, in seconds
   */
  static double[] interval(double start, double end, double shortest) {
    // A steep target may turn what is looked at round sooner than any time constant would.
    double first = Math.min(shortest / 64, (end - start) / 8);
    DoubleStream.Builder times = DoubleStream.builder().add(start).add(start + first * BESIDE_EDGE);
    double place = start;
    for (double step = first; start + step < end; step *= STEP) {
      place = start + step;
      times.add(place);
    }
    return times.add(end - (end - place) * BESIDE_EDGE).add(end).build().toArray();
  }

  /** A grid from 0 to an end whose places grow by a ratio from the first one on. */
  static double[] growing(double end, double first, double ratio) {
    DoubleStream.Builder places = DoubleStream.builder().add(0);
    for (double place = first; place < end; place *= ratio) {
      places.add(place);
    }
    return places.add(end).build().toArray();
  }
}
