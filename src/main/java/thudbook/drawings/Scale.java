package thudbook.drawings;

/**
 * Where a value stands between the ends of an axis.
 *
 * @param from value at the start
 * @param to value at the end, above {@code from}
 * @param bend 0 for a linear scale; above 0, asinh(v / bend) is linear: evenly spaced values up to
 *     about {@code bend}, evenly spaced ratios far above it. It goes through 0, which a logarithm
 *     can't, and keeps the sign.
 */
public record Scale(double from, double to, double bend) {
  public Scale {
    if (!(Double.isFinite(from) && Double.isFinite(to) && from < to)) {
      throw new IllegalArgumentException("an axis must rise, was from " + from + " to " + to);
    }
    if (!(bend >= 0 && Double.isFinite(bend))) {
      throw new IllegalArgumentException("bend must be at least 0, was " + bend);
    }
  }

  /** Evenly spaced values. */
  public static Scale linear(double from, double to) {
    return new Scale(from, to, 0);
  }

  /** The place of a value: 0 at the start, 1 at the end, beyond them outside. */
  public double place(double value) {
    double start = bent(from);
    return (bent(value) - start) / (bent(to) - start);
  }

  private double bent(double value) {
    if (bend == 0) {
      return value;
    }
    double size = Math.abs(value) / bend;
    return Math.copySign(Math.log(size + Math.sqrt(size * size + 1)), value);
  }
}
