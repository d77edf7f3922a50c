package thudbook.sources;

import org.hipparchus.complex.Complex;

/**
 * The tail of Fresnel's integral without its phase, F(u) = ∫_u^∞ e^{j(t²−u²)} dt for u ≥ 0.
 *
 * <p>F(u) = (√π/2) e^{jπ/4} erfcx(e^{−jπ/4}u), erfcx(ζ) = e^{ζ²} erfc(ζ). It falls smoothly from
 * (√π/2) e^{jπ/4} at 0 to j/(2u): what oscillates is left to the caller, who knows its phase
 * exactly.
 *
 * <p>Source: the rational series of J. A. C. Weideman, Computation of the complex error function,
 * SIAM J. Numer. Anal. 31 (1994), with N = 40: erfcx(ζ) = 2p(Z)/(L+ζ)² + 1/(√π(L+ζ)), Z =
 * (L−ζ)/(L+ζ), L = √(N/√2), p a polynomial whose coefficients are a cosine transform of
 * e^{−t²}(L²+t²). Accuracy on this ray: 2e-15, tested against quadrature.
 */
final class FresnelTail {
  private static final int TERMS = 40;
  private static final double L = Math.sqrt(TERMS / Math.sqrt(2));
  private static final double[] COEFFICIENTS = coefficients();

  private FresnelTail() {}

  private static double[] coefficients() {
    double[] a = new double[TERMS];
    int half = 2 * TERMS;
    for (int k = 1 - half; k < half; k++) {
      double angle = k * Math.PI / half;
      double t = L * Math.tan(angle / 2);
      double sample = Math.exp(-t * t) * (L * L + t * t) / (2 * half);
      for (int m = 0; m < TERMS; m++) {
        a[m] += sample * Math.cos((m + 1) * angle);
      }
    }
    return a;
  }

  /**
   * F(u).
   *
   * @param u 0 or more
   */
  static Complex at(double u) {
    // ζ = re − j·re, as the ray is that of e^{−jπ/4}; the complex arithmetic is written out because
    // spectra with thousands of sides come through here.
    double re = u / Math.sqrt(2);
    double sum = L + re;
    double norm = sum * sum + re * re;
    // 1/(L+ζ)
    double inverseRe = sum / norm;
    double inverseIm = re / norm;
    // Z = (L−ζ)/(L+ζ) = 2L/(L+ζ) − 1
    double zRe = 2 * L * inverseRe - 1;
    double zIm = 2 * L * inverseIm;
    double pRe = 0;
    double pIm = 0;
    for (int m = TERMS - 1; m >= 0; m--) {
      double next = pRe * zRe - pIm * zIm + COEFFICIENTS[m];
      pIm = pRe * zIm + pIm * zRe;
      pRe = next;
    }
    // (2p/(L+ζ) + 1/√π)/(L+ζ)
    double innerRe = 2 * (pRe * inverseRe - pIm * inverseIm) + 1 / Math.sqrt(Math.PI);
    double innerIm = 2 * (pRe * inverseIm + pIm * inverseRe);
    double erfcxRe = innerRe * inverseRe - innerIm * inverseIm;
    double erfcxIm = innerRe * inverseIm + innerIm * inverseRe;
    double scale = Math.sqrt(Math.PI / 8);
    return new Complex(scale * (erfcxRe - erfcxIm), scale * (erfcxRe + erfcxIm));
  }
}
