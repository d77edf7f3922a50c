package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference and property tests of the tail of Fresnel's integral. */
class FresnelTailTest {
  /**
   * Reference: C(x) and S(x) to ten digits, as mpmath's fresnelc and fresnels give them (printed in
   * Abramowitz &amp; Stegun, table 7.7, its number from memory), through C(x) + jS(x) = (1+j)/2 −
   * √(2/π) e^{ju²} F(u), u = x√(π/2).
   */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.4923442259, 0.0647324329",
    "1, 0.7798934004, 0.4382591474",
    "2, 0.4882534061, 0.3434156784"
  })
  void agreesWithPrintedFresnelIntegrals(double x, double c, double s) {
    double u = x * Math.sqrt(Math.PI / 2);
    Complex tail =
        FresnelTail.at(u)
            .multiply(new Complex(Math.cos(u * u), Math.sin(u * u)))
            .multiply(Math.sqrt(2 / Math.PI));
    assertThat(0.5 - tail.getReal()).isCloseTo(c, within(1e-10));
    assertThat(0.5 - tail.getImaginary()).isCloseTo(s, within(1e-10));
  }

  /** Reference: F(0) = (√π/2) e^{jπ/4}, Fresnel's integral over the half axis (textbook). */
  @Test
  void startsWithTheIntegralOverTheHalfAxis() {
    Complex tail = FresnelTail.at(0);
    assertThat(tail.getReal()).isCloseTo(Math.sqrt(Math.PI / 8), within(2e-15));
    assertThat(tail.getImaginary()).isCloseTo(Math.sqrt(Math.PI / 8), within(2e-15));
  }

  /** Reference: F(u) ~ j/(2u) + 1/(4u³) − 3j/(8u⁵) − 15/(16u⁷), by parts again and again. */
  @Test
  void followsItsAsymptoticSeries() {
    for (double u = 100; u < 1e9; u *= 1.7) {
      Complex tail = FresnelTail.at(u);
      assertThat(tail.getImaginary())
          .isCloseTo(1 / (2 * u) - 3 / (8 * Math.pow(u, 5)), within(1e-14 / u));
      assertThat(tail.getReal())
          .isCloseTo(1 / (4 * Math.pow(u, 3)) - 15 / (16 * Math.pow(u, 7)), within(1e-14 / u));
    }
  }

  /**
   * Property: agrees with the library's integrator along the path on which the integrand falls
   * fastest, t = u + s e^{jπ/4}: F(u) = e^{jπ/4} ∫ e^{−s²} e^{2us e^{j3π/4}} ds.
   */
  @Tag("long")
  @Test
  void agreesWithQuadratureAlongSteepestDescent() {
    for (double u = 0; u < 12; u += 0.37) {
      double slope = Math.sqrt(2) * u;
      double even =
          Quadrature.integral(s -> Math.exp(-s * s - slope * s) * Math.cos(slope * s), 0, 7);
      double odd =
          Quadrature.integral(s -> Math.exp(-s * s - slope * s) * Math.sin(slope * s), 0, 7);
      Complex tail = FresnelTail.at(u);
      assertThat(tail.getReal()).isCloseTo((even - odd) / Math.sqrt(2), within(4e-15));
      assertThat(tail.getImaginary()).isCloseTo((even + odd) / Math.sqrt(2), within(4e-15));
    }
  }
}
