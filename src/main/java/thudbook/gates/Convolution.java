package thudbook.gates;

/**
 * Convolutions of exponentials e^(−a·s), which is how one slow thing answers to another. Symmetric
 * in their rates, and smooth where rates coincide. Rates are at least 0, in 1/s.
 *
 * <p>Derived in closed form as divided differences of e^(−x·s) over its rates; accurate to some
 * 1e-14 of the largest value.
 */
public final class Convolution {
  private static final int TERMS = 14;

  private Convolution() {}

  /**
   * ∫₀ˢ e^(−a(s−r)) e^(−b·r) dr = (e^(−b·s) − e^(−a·s))/(a − b); s·e^(−a·s) where a = b.
   *
   * @return seconds, at least 0
   */
  public static double of(double a, double b, double s) {
    double apart = Math.abs(a - b) * s;
    double slow = Math.exp(-Math.min(a, b) * s);
    return apart < 1e-300 ? s * slow : slow * s * (-Math.expm1(-apart) / apart);
  }

  /**
   * The convolution of three exponentials, e^(−a·s) ∗ e^(−b·s) ∗ e^(−c·s); s²/2·e^(−a·s) where all
   * rates are equal.
   *
   * @return square seconds, at least 0
   */
  public static double of(double a, double b, double c, double s) {
    double low = Math.min(a, Math.min(b, c));
    double high = Math.max(a, Math.max(b, c));
    double middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    if ((high - low) * s > 0.5) {
      return (of(low, middle, s) - of(middle, high, s)) / (high - low);
    }
    // Taylor about the middle rate: Σ (−s)ⁿ hₙ/(n + 2)!, hₙ the complete symmetric polynomials of
    // the two distances x ≤ 0 ≤ y, hₙ = Σ xⁱ yⁿ⁻ⁱ.
    double x = (low - middle) * s;
    double y = (high - middle) * s;
    double sum = 0;
    double symmetric = 1;
    double power = 1;
    double factorial = 2;
    for (int n = 0; n < TERMS; n++) {
      sum += (n % 2 == 0 ? symmetric : -symmetric) / factorial;
      power *= x;
      symmetric = symmetric * y + power;
      factorial *= n + 3;
    }
    return s * s * Math.exp(-middle * s) * sum;
  }
}
