package thudbook.sources;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.hipparchus.complex.Complex;
import org.hipparchus.special.BesselJ;

/**
 * The complex amplitudes c_n of the side frequencies f_c + n·f_m of a modulated carrier: c_n is the
 * mean of e^{jφ(θ)} e^{−jnθ} over a cycle, φ the phase that the modulator adds and I the index.
 *
 * <p>For n ≥ 0, with F the {@linkplain FresnelTail tail of Fresnel's integral} continued to
 * negative x as √π e^{jπ/4} e^{−jx²} − F(−x):
 *
 * <ul>
 *   <li>sine, φ = I sin θ: J_n(I) (Chowning 1973; DLMF 10.12)
 *   <li>square, φ = I arcsin(sin θ): (2I/π) sin(π(I−n)/2)/(I²−n²), ½ at n = I
 *   <li>triangle, φ = I(θ − θ|θ|/π): Re[F((n−I)s) − (−1)^n F((n+I)s)]/√(πI), s = √(π/I)/2
 *   <li>sawtooth, φ = I(θ²/2π − π/6): e^{jπI/3}(−1)^n [F((n−I)r) − F((n+I)r)]/√(2πI), r = √(π/2I)
 * </ul>
 *
 * <p>The last three were derived here: the phase is linear or quadratic in θ between its corners,
 * and the square completed. Below 0: c_−n = (−1)^n c_n; for the sawtooth, whose φ is even, c_−n =
 * c_n.
 *
 * <p>Accuracy 1e-12, tested against an FFT and quadrature.
 */
final class SideAmplitudes {
  /** The sides are followed until so much power, of 1, is left out. */
  static final double OMITTED_POWER = 1e-10;

  /** Below this index all sides together have less than a hundredth of the omitted power. */
  private static final double UNMODULATED = 1e-6;

  private final List<Complex> amplitudes;
  private final boolean even;

  private SideAmplitudes(List<Complex> amplitudes, boolean even) {
    this.amplitudes = amplitudes;
    this.even = even;
  }

  /**
   * The amplitudes of one modulation.
   *
   * @param wave any but a pulse
   * @param index I, 0 to 50
   */
  static SideAmplitudes of(Source.Wave wave, double index) {
    boolean even = wave == Source.Wave.SAWTOOTH;
    if (index < UNMODULATED) {
      return new SideAmplitudes(List.of(Complex.ONE), even);
    }
    IntFunction<Complex> amplitude =
        switch (wave) {
          case SINE -> sine(index);
          case SQUARE -> n -> square(index, n);
          case TRIANGLE -> n -> triangle(index, n);
          case SAWTOOTH -> n -> sawtooth(index, n);
          case PULSE -> throw new IllegalArgumentException("a pulse does not modulate");
        };
    List<Complex> amplitudes = new ArrayList<>();
    double left = 1;
    while (left > OMITTED_POWER) {
      int n = amplitudes.size();
      Complex each = amplitude.apply(n);
      left -= (n == 0 ? 1 : 2) * power(each);
      amplitudes.add(each);
    }
    return new SideAmplitudes(amplitudes, even);
  }

  /** The highest |n| that is not left out. */
  int highest() {
    return amplitudes.size() - 1;
  }

  /** c_n, |n| up to {@link #highest}. */
  Complex at(int n) {
    Complex upper = amplitudes.get(Math.abs(n));
    return n < 0 && n % 2 != 0 && !even ? upper.negate() : upper;
  }

  private static IntFunction<Complex> sine(double index) {
    // J_n falls faster than any power once n exceeds I: so many orders always hold all but 1e-10.
    int orders = (int) (index + 8 * Math.cbrt(index)) + 16;
    double[] bessel = BesselJ.rjBesl(index, 0, orders).getVals();
    return n -> new Complex(bessel[n]);
  }

  private static Complex square(double index, int n) {
    // sin(π(I−n)/2) with n taken out first, so that a large n costs no digits of a small I.
    double quarter = Math.PI / 2 * index;
    double sine =
        switch (n % 4) {
          case 0 -> Math.sin(quarter);
          case 1 -> -Math.cos(quarter);
          case 2 -> -Math.sin(quarter);
          default -> Math.cos(quarter);
        };
    double apart = index - n;
    if (Math.abs(apart) < 0.5) {
      double x = Math.PI / 2 * apart;
      return new Complex(index / (index + n) * (x == 0 ? 1 : Math.sin(x) / x));
    }
    return new Complex(2 * index / Math.PI * sine / (apart * (index + n)));
  }

  private static Complex triangle(double index, int n) {
    double s = Math.sqrt(Math.PI / index) / 2;
    Complex near = tail((n - index) * s);
    Complex far = tail((n + index) * s);
    double real = n % 2 == 0 ? near.getReal() - far.getReal() : near.getReal() + far.getReal();
    return new Complex(real / Math.sqrt(Math.PI * index));
  }

  private static Complex sawtooth(double index, int n) {
    double r = Math.sqrt(Math.PI / (2 * index));
    double scale = (n % 2 == 0 ? 1 : -1) / Math.sqrt(2 * Math.PI * index);
    return turn(Math.PI * index / 3)
        .multiply(tail((n - index) * r).subtract(tail((n + index) * r)))
        .multiply(scale);
  }

  private static double power(Complex amplitude) {
    return amplitude.getReal() * amplitude.getReal()
        + amplitude.getImaginary() * amplitude.getImaginary();
  }

  /** F(x) for any real x. */
  private static Complex tail(double x) {
    return x >= 0
        ? FresnelTail.at(x)
        : turn(Math.PI / 4 - x * x).multiply(Math.sqrt(Math.PI)).subtract(FresnelTail.at(-x));
  }

  /** e^{jα}. */
  private static Complex turn(double alpha) {
    return new Complex(Math.cos(alpha), Math.sin(alpha));
  }
}
