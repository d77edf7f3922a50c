package thudbook.drawings;

/**
 * A point, in the units of the axes it is drawn over.
 *
 * @param x finite
 * @param y finite
 */
public record Point(double x, double y) {
  public Point {
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("a point must be finite, was " + x + ", " + y);
    }
  }
}
