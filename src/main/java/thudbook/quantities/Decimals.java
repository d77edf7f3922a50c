package thudbook.quantities;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Doubles as the shortest decimal numbers that stand for them. */
public final class Decimals {
  /** Two numbers of at most so many digits never share a double, so one of them is the shortest. */
  private static final int ALWAYS_DISTINCT = 15;

  private Decimals() {}

  /**
   * The decimal number with the fewest digits that reads back as exactly this double; of several
   * the one nearest to it. −0 gives 0.
   *
   * <p>{@link Double#toString} is not always the shortest before JDK 19 (2.0E-3 is, 2.2E-322 and
   * 2.0E23 were not), so it only gives the number of digits to start from.
   *
   * @param value finite
   * @throws IllegalArgumentException if the value is NaN or infinite
   */
  public static BigDecimal shortest(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a finite number was expected, was " + value);
    }
    if (value == 0) {
      return BigDecimal.ZERO;
    }
    BigDecimal best = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    if (best.precision() <= ALWAYS_DISTINCT && Math.abs(value) >= Double.MIN_NORMAL) {
      return best;
    }
    BigDecimal exact = new BigDecimal(value);
    for (int digits = best.precision(); digits > 0; digits--) {
      BigDecimal candidate = nearest(exact, value, digits);
      if (candidate.doubleValue() != value) {
        break;
      }
      best = candidate;
    }
    return best.stripTrailingZeros();
  }

  // Below a power of two the doubles lie twice as close as above it, so the nearest decimal can
  // miss where its neighbour on the other side hits.
  private static BigDecimal nearest(BigDecimal exact, double value, int digits) {
    BigDecimal near = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
    if (near.doubleValue() == value) {
      return near;
    }
    BigDecimal down = exact.round(new MathContext(digits, RoundingMode.DOWN));
    return down.compareTo(near) == 0 ? exact.round(new MathContext(digits, RoundingMode.UP)) : down;
  }

  /**
   * The shortest decimal number with its point moved, as plain digits; very large and very small
   * ones with an exponent, such as {@code 1e-30}.
   *
   * @param places how far the point moves to the right
   */
  public static String text(double value, int places) {
    BigDecimal moved = shortest(value).scaleByPowerOfTen(places).stripTrailingZeros();
    int exponent = moved.precision() - moved.scale() - 1;
    if (moved.signum() == 0 || (exponent >= -12 && exponent <= 20)) {
      return moved.toPlainString();
    }
    BigDecimal mantissa = moved.scaleByPowerOfTen(-exponent).stripTrailingZeros();
    return mantissa.toPlainString() + "e" + exponent;
  }
}
