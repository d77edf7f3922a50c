package thudbook.equipment;

import java.util.List;
import org.hipparchus.analysis.polynomials.PolynomialFunction;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import thudbook.quantities.Check;

/**
 * A taper through measured points: the monotone piecewise cubic of Fritsch and Butland. The slope
 * at an inner point is the weighted harmonic mean of the slopes d of the lines on both sides,
 *
 * <p>m = (w₁ + w₂)/(w₁/d₁ + w₂/d₂), w₁ = 2h₂ + h₁, w₂ = h₂ + 2h₁,
 *
 * <p>with h the widths of the intervals; at an end it is that of the line there. Slopes of at most
 * three times that of the line keep every piece monotone, so that the inverse exists; it is found
 * by bracketing within the piece. Where all values are on one side of 0 and span more than a
 * decade, their logarithm is interpolated: between two measured times of a knob that spans decades
 * a straight line would be far off in the middle.
 *
 * <p>Source: F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise
 * cubic interpolants", SIAM J. Sci. Stat. Comput. 5(2), 1984, 300–304; the weighted form is that of
 * Brodlie (from memory).
 */
public final class MeasuredTaper implements Taper {
  /** The most points of a table. */
  public static final int MOST_POINTS = 64;

  private static final double DECADE = 10;
  private static final double RELATIVE_ACCURACY = 1e-15;
  private static final double ABSOLUTE_ACCURACY = 1e-15;
  private static final int MOST_ORDER = 5;
  private static final int MOST_EVALUATIONS = 200;

  private final List<Point> points;
  private final double[] shares;
  private final double[] levels;
  private final boolean logarithmic;
  private final double sign;
  private final PolynomialSplineFunction spline;

  /**
   * What was measured at one place.
   *
   * @param share of the sweep, 0 to 1
   * @param value in the SI unit of the knob, finite
   */
  public record Point(double share, double value) {
    public Point {
      Check.inRange("share of the sweep", share, 0, 1);
      Check.inRange("value", value, -Double.MAX_VALUE, Double.MAX_VALUE);
    }
  }

  MeasuredTaper(List<Point> points) {
    this.points = List.copyOf(points);
    if (this.points.size() < 2 || this.points.size() > MOST_POINTS) {
      throw new IllegalArgumentException(
          "2 to " + MOST_POINTS + " points were expected, were " + this.points.size());
    }
    if (this.points.get(0).share() != 0 || this.points.get(this.points.size() - 1).share() != 1) {
      throw new IllegalArgumentException("a table goes from share 0 to share 1");
    }
    this.sign = Math.signum(to());
    double ratio = from() / to();
    // A table that ends at 0 has no logarithm there, though its ratio is infinite.
    this.logarithmic = sign * Math.signum(from()) > 0 && Math.max(ratio, 1 / ratio) > DECADE;
    this.shares = this.points.stream().mapToDouble(Point::share).toArray();
    this.levels = this.points.stream().mapToDouble(p -> level(p.value())).toArray();
    checkMonotone();
    this.spline = spline();
  }

  /** The measured points, from left to right. */
  public List<Point> points() {
    return points;
  }

  @Override
  public double from() {
    return points.get(0).value();
  }

  @Override
  public double to() {
    return points.get(points.size() - 1).value();
  }

  @Override
  public double value(double share) {
    Check.inRange("share of the sweep", share, 0, 1);
    for (Point point : points) {
      // A measured point is met exactly.
      if (point.share() == share) {
        return point.value();
      }
    }
    double level = spline.value(share);
    return logarithmic ? sign * Math.exp(level) : level;
  }

  @Override
  public double share(double value) {
    Taper.checkReached(this, value);
    for (Point point : points) {
      if (point.value() == value) {
        return point.share();
      }
    }
    double level = level(value);
    int piece = 0;
    while (piece < shares.length - 2 && (level - levels[piece + 1]) * direction() > 0) {
      piece++;
    }
    double left = shares[piece];
    double right = shares[piece + 1];
    // A level within rounding of an end has no change of sign to bracket.
    if ((spline.value(left) - level) * direction() >= 0) {
      return left;
    }
    if ((spline.value(right) - level) * direction() <= 0) {
      return right;
    }
    return new BracketingNthOrderBrentSolver(RELATIVE_ACCURACY, ABSOLUTE_ACCURACY, MOST_ORDER)
        .solve(
            MOST_EVALUATIONS,
            share -> spline.value(share) - level,
            left,
            right,
            AllowedSolution.ANY_SIDE);
  }

  private double level(double value) {
    return logarithmic ? Math.log(value / sign) : value;
  }

  private double direction() {
    return Math.signum(levels[levels.length - 1] - levels[0]);
  }

  private void checkMonotone() {
    for (int i = 1; i < shares.length; i++) {
      if (!(shares[i] > shares[i - 1])) {
        throw new IllegalArgumentException("shares of a table rise, found " + points.get(i));
      }
      if (!((levels[i] - levels[i - 1]) * direction() > 0)) {
        throw new IllegalArgumentException(
            "values of a table rise everywhere or fall everywhere, found " + points.get(i));
      }
    }
  }

  private PolynomialSplineFunction spline() {
    int last = shares.length - 1;
    double[] slopes = new double[last + 1];
    slopes[0] = line(0);
    slopes[last] = line(last - 1);
    for (int i = 1; i < last; i++) {
      double before = shares[i] - shares[i - 1];
      double after = shares[i + 1] - shares[i];
      double weightBefore = 2 * after + before;
      double weightAfter = after + 2 * before;
      slopes[i] =
          (weightBefore + weightAfter) / (weightBefore / line(i - 1) + weightAfter / line(i));
    }
    PolynomialFunction[] pieces = new PolynomialFunction[last];
    for (int i = 0; i < last; i++) {
      double width = shares[i + 1] - shares[i];
      double line = line(i);
      pieces[i] =
          new PolynomialFunction(
              levels[i],
              slopes[i],
              (3 * line - 2 * slopes[i] - slopes[i + 1]) / width,
              (slopes[i] + slopes[i + 1] - 2 * line) / (width * width));
    }
    return new PolynomialSplineFunction(shares, pieces);
  }

  private double line(int piece) {
    return (levels[piece + 1] - levels[piece]) / (shares[piece + 1] - shares[piece]);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof MeasuredTaper taper && taper.points.equals(points);
  }

  @Override
  public int hashCode() {
    return points.hashCode();
  }

  @Override
  public String toString() {
    return "MeasuredTaper" + points;
  }
}
