package thudbook.predictions;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** Roots and extrema of smooth functions on intervals known to hold exactly one. */
final class Roots {
  /** How exactly a time is found, in seconds (1e-12 s is asked for; one digit more is free). */
  private static final double SECONDS = 1e-13;

  private static final double RELATIVE = 1e-14;
  private static final int MOST_EVALUATIONS = 300;

  /** The share of an interval at which golden section looks: (3 − √5)/2. */
  private static final double GOLDEN = 0.381966011250105;

  private Roots() {}

  /**
   * Where a function that is monotone from {@code low} to {@code high} passes 0.
   *
   * @return the nearer end if it does not change its sign there
   */
  static double between(double low, double high, DoubleUnaryOperator function) {
    double atLow = function.applyAsDouble(low);
    double atHigh = function.applyAsDouble(high);
    if (atLow == 0 || !(high > low)) {
      return low;
    }
    if (atHigh == 0) {
      return high;
    }
    if (atLow > 0 == atHigh > 0) {
      return Math.abs(atLow) < Math.abs(atHigh) ? low : high;
    }
    return new BracketingNthOrderBrentSolver(RELATIVE, SECONDS, 1e-300, 4)
        .solve(MOST_EVALUATIONS, function::applyAsDouble, low, high, AllowedSolution.ANY_SIDE);
  }

  /**
   * Where a function has its only maximum between {@code low} and {@code high}, by golden section
   * to the square root of double precision, beyond which values no longer differ.
   */
  static double maximum(double low, double high, DoubleUnaryOperator function) {
    double a = low;
    double b = high;
    double x = a + GOLDEN * (b - a);
    double y = b - GOLDEN * (b - a);
    double atX = function.applyAsDouble(x);
    double atY = function.applyAsDouble(y);
    while (b - a > 1e-9 * Math.abs(b) + SECONDS) {
      if (atX >= atY) {
        b = y;
        y = x;
        atY = atX;
        x = a + GOLDEN * (b - a);
        atX = function.applyAsDouble(x);
      } else {
        a = x;
        x = y;
        atX = atY;
        y = b - GOLDEN * (b - a);
        atY = function.applyAsDouble(y);
      }
    }
    return atX >= atY ? x : y;
  }
}
