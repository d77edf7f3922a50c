package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;

/**
 * Property: convolutions against the library's Gauss–Legendre quadrature of their definitions, and
 * their limits.
 */
class ConvolutionTest {
  private static final double[] RATES = {0, 0.3, 0.3000001, 0.31, 0.7, 1, 2, 10, 60};

  @Test
  void twoExponentialsAgreeWithQuadrature() {
    for (double a : RATES) {
      for (double b : RATES) {
        for (double s : new double[] {0, 1e-3, 0.4, 1.7}) {
          double expected = integral(r -> Math.exp(-a * (s - r) - b * r), s);
          assertThat(Convolution.of(a, b, s)).isEqualTo(expected, within(1e-13));
        }
      }
    }
  }

  @Test
  void threeExponentialsAgreeWithQuadrature() {
    for (double a : RATES) {
      for (double b : RATES) {
        for (double c : RATES) {
          for (double s : new double[] {0.4, 1.7}) {
            double expected = integral(r -> Math.exp(-a * (s - r)) * Convolution.of(b, c, r), s);
            assertThat(Convolution.of(a, b, c, s)).isEqualTo(expected, within(1e-13));
          }
        }
      }
    }
  }

  private static double integral(DoubleUnaryOperator function, double end) {
    if (end == 0) {
      return 0;
    }
    double sum = 0;
    int parts = 20;
    for (int i = 0; i < parts; i++) {
      GaussIntegrator rule =
          new GaussIntegratorFactory().legendre(20, i * end / parts, (i + 1) * end / parts);
      sum += rule.integrate(function::applyAsDouble);
    }
    return sum;
  }

  /** Equal rates: s·e^(−as) and s²/2·e^(−as). */
  @Test
  void equalRatesAreTheirLimit() {
    assertThat(Convolution.of(2, 2, 0.5)).isEqualTo(0.5 * Math.exp(-1), within(1e-16));
    assertThat(Convolution.of(2, 2, 2, 0.5)).isEqualTo(0.125 * Math.exp(-1), within(1e-16));
    assertThat(Convolution.of(0, 0, 3)).isEqualTo(3);
    assertThat(Convolution.of(0, 0, 0, 3)).isEqualTo(4.5);
    assertThat(Convolution.of(5, 1, 0)).isZero();
  }
}
