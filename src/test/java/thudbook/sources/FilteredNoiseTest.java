package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference and property tests of noise behind poles. */
class FilteredNoiseTest {
  private static Spectrum noise(Source.Colour colour, double from, double to) {
    return Spectrum.of(new Source.Noise(colour, from, to, 5));
  }

  /** What of white noise passes, as a bandwidth in hertz. */
  private static double bandwidth(double... poleHertz) {
    return noise(Source.Colour.WHITE, 0.01, 20_000).passedShare(poleHertz) * (20_000 - 0.01);
  }

  /**
   * Reference: the noise bandwidth of one pole is π/2 f_c (textbook). The band ends at 0.01 Hz and
   * 20 kHz; what lies outside is 0.01 Hz below and f_c²/b above.
   */
  @ParameterizedTest
  @ValueSource(doubles = {2, 10, 40})
  void onePoleHasItsNoiseBandwidth(double pole) {
    assertThat(bandwidth(pole))
        .isCloseTo(Math.PI / 2 * pole - 0.01 - pole * pole / 20_000, withinPercentage(1e-3));
  }

  /** Reference: the noise bandwidth of two equal poles is π/4 f_c (textbook). */
  @ParameterizedTest
  @ValueSource(doubles = {2, 10, 100})
  void twoEqualPolesHaveTheirNoiseBandwidth(double pole) {
    assertThat(bandwidth(pole, pole)).isCloseTo(Math.PI / 4 * pole - 0.01, withinPercentage(1e-3));
  }

  /** Reference: the noise bandwidth of two poles is (π/2) f₁f₂/(f₁+f₂) (textbook). */
  @ParameterizedTest
  @ValueSource(doubles = {1.001, 1.5, 3, 20})
  void twoUnequalPolesHaveTheirNoiseBandwidth(double spread) {
    double p = 10;
    double q = 10 * spread;
    assertThat(bandwidth(p, q))
        .isCloseTo(Math.PI / 2 * p * q / (p + q) - 0.01, withinPercentage(1e-3));
  }

  /** Reference: the mean frequencies of flat and of 1/f density, (a+b)/2 and (b−a)/ln(b/a). */
  @Test
  void unfilteredNoiseHasItsTextbookCentroid() {
    assertThat(noise(Source.Colour.WHITE, 20, 20_000).centroidHertz())
        .isCloseTo(10_010, within(1e-9));
    assertThat(noise(Source.Colour.PINK, 20, 20_000).centroidHertz())
        .isCloseTo(19_980 / Math.log(1000), within(1e-9));
  }

  /** Property: any number of poles agrees with the library's integrator, seeded random cases. */
  @Tag("long")
  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void agreesWithAGeneralIntegrator(Source.Colour colour) {
    Random random = new Random(20_731);
    int order = colour == Source.Colour.WHITE ? 0 : -1;
    for (int i = 0; i < 400; i++) {
      double from = 0.01 * Math.pow(1e6, random.nextDouble());
      double to = from + (20_000 - from) * Math.pow(10, -6 * random.nextDouble());
      double[] poles = new double[random.nextInt(9)];
      Arrays.setAll(poles, each -> 0.01 * Math.pow(2e10, random.nextDouble()));
      Spectrum spectrum = noise(colour, from, to);
      double power = Quadrature.moment(order, from, to, poles);
      double share = power / Quadrature.moment(order, from, to);
      double tolerance = poles.length <= 2 ? 1e-11 : 1e-9;
      String what = colour + " " + from + " to " + to + " " + Arrays.toString(poles);
      assertThat(spectrum.passedShare(poles) / share).as(what).isCloseTo(1, within(tolerance));
      assertThat(
              spectrum.centroidHertz(poles)
                  / (Quadrature.moment(order + 1, from, to, poles) / power))
          .as(what)
          .isCloseTo(1, within(tolerance));
    }
  }

  /** Property: the hardest product there is, eight equal poles, in band and far below it. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 5, 40, 1000, 9000, 200_000})
  void eightEqualPolesAgreeWithAGeneralIntegrator(double pole) {
    double[] poles = new double[8];
    Arrays.fill(poles, pole);
    double share = Quadrature.moment(0, 20, 20_000, poles) / Quadrature.moment(0, 20, 20_000);
    assertThat(noise(Source.Colour.WHITE, 20, 20_000).passedShare(poles) / share)
        .isCloseTo(1, within(1e-9));
  }

  /**
   * Property: equal poles are the limit of nearly equal ones, and no digits are lost on the way.
   */
  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void equalPolesAreTheLimitOfNearlyEqualOnes(Source.Colour colour) {
    Spectrum spectrum = noise(colour, 20, 20_000);
    int order = colour == Source.Colour.WHITE ? 0 : -1;
    for (double pole : new double[] {30, 1000, 50_000}) {
      double equal = spectrum.passedShare(pole, pole);
      for (double apart = 0.1; apart > 1e-16; apart /= 10) {
        double other = pole * (1 + apart);
        double share = spectrum.passedShare(pole, other);
        assertThat(share).isBetween(equal * (1 - 1e-14), equal * (1 + 2 * apart + 1e-14));
        assertThat(share).isCloseTo(spectrum.passedShare(other, pole), within(1e-15));
        double quadrature =
            Quadrature.moment(order, 20, 20_000, pole, other)
                / Quadrature.moment(order, 20, 20_000);
        assertThat(share / quadrature).isCloseTo(1, within(1e-12));
        assertThat(spectrum.centroidHertz(pole, other) / spectrum.centroidHertz(pole, pole))
            .isBetween(1 - 1e-13, 1 + 2 * apart + 1e-13);
      }
    }
  }

  /** Property: the step from the closed forms to quadrature far below the band shows nowhere. */
  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void nothingJumpsFarBelowTheBand(Source.Colour colour) {
    Spectrum spectrum = noise(colour, 3000, 20_000);
    double last = spectrum.passedShare(50, 90);
    for (double pole = 90.01; pole < 110; pole += 0.01) {
      double share = spectrum.passedShare(50, pole);
      assertThat(share / last).isBetween(1.0, 1.0003);
      last = share;
    }
  }

  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void polesFarAboveTheBandPassEverything(Source.Colour colour) {
    Spectrum spectrum = noise(colour, 20, 20_000);
    double infinity = Double.POSITIVE_INFINITY;
    assertThat(spectrum.passedShare()).isEqualTo(1);
    assertThat(spectrum.passedShare(infinity)).isEqualTo(1);
    assertThat(spectrum.passedShare(infinity, infinity, infinity)).isEqualTo(1);
    assertThat(spectrum.passedShare(Double.MAX_VALUE, 1e200)).isEqualTo(1);
    assertThat(spectrum.passedShare(500, infinity)).isEqualTo(spectrum.passedShare(500));
    assertThat(spectrum.passedShare(infinity, 500, 1e300, 700))
        .isEqualTo(spectrum.passedShare(500, 700));
    assertThat(spectrum.centroidHertz(500, infinity)).isEqualTo(spectrum.centroidHertz(500));
    for (double pole = 1e6; pole < 1e16; pole *= 3) {
      // Between 1 − (b/p)² and 1.
      assertThat(spectrum.passedShare(pole)).isBetween(1 - Math.pow(20_000 / pole, 2) - 1e-15, 1.0);
      assertThat(spectrum.passedShare(pole, pole))
          .isBetween(1 - 2 * Math.pow(20_000 / pole, 2) - 1e-15, 1.0);
    }
  }

  /** Property: far below the band a pole passes p²/f², so that the shares are moments of that. */
  @Test
  void polesFarBelowTheBandFallLikeTheirSquares() {
    Spectrum white = noise(Source.Colour.WHITE, 20, 20_000);
    double p = 1e-3;
    assertThat(white.passedShare(p) / (p * p * (1 / 20.0 - 1 / 20_000.0) / 19_980))
        .isCloseTo(1, within(1e-8));
    double fourth = Math.pow(p, 4) * (Math.pow(20, -3) - Math.pow(20_000, -3)) / 3;
    assertThat(white.passedShare(p, p) / (fourth / 19_980)).isCloseTo(1, within(1e-8));
  }

  /** Property: in a band of no width noise is a sine. */
  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void aTinyBandIsASine(Source.Colour colour) {
    Spectrum spectrum = noise(colour, 1000, 1000.000001);
    assertThat(spectrum.passedShare(1000)).isCloseTo(0.5, within(1e-8));
    assertThat(spectrum.passedShare(1000, 1000)).isCloseTo(0.25, within(1e-8));
    assertThat(spectrum.passedShare(10, 3000, 1000))
        .isCloseTo(Quadrature.passed(1000, 10, 3000, 1000), withinPercentage(1e-6));
    assertThat(spectrum.centroidHertz(100, 300)).isCloseTo(1000, within(1e-5));
  }

  /** Property: more poles or lower ones never pass more, nor anything brighter. */
  @ParameterizedTest
  @EnumSource(Source.Colour.class)
  void lowerPolesPassLessAndDarker(Source.Colour colour) {
    Random random = new Random(7);
    for (int i = 0; i < 300; i++) {
      Spectrum spectrum = noise(colour, 20, 20_000);
      double[] poles = new double[1 + random.nextInt(5)];
      Arrays.setAll(poles, each -> Math.pow(10, 6 * random.nextDouble()));
      double[] lower = poles.clone();
      lower[random.nextInt(lower.length)] *= 0.99;
      double[] fewer = Arrays.copyOf(poles, poles.length - 1);
      assertThat(spectrum.passedShare(lower)).isLessThan(spectrum.passedShare(poles));
      assertThat(spectrum.passedShare(poles)).isLessThan(spectrum.passedShare(fewer));
      assertThat(spectrum.centroidHertz(lower)).isLessThan(spectrum.centroidHertz(poles));
      assertThat(spectrum.centroidHertz(poles)).isBetween(20.0, spectrum.centroidHertz(fewer));
    }
  }

  @Test
  void noiseHasNoPeriodThatATimeCouldBeShorterThan() {
    assertThat(noise(Source.Colour.PINK, 35, 9000).lowestStrongHertz())
        .isEqualTo(Double.POSITIVE_INFINITY);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, 0, -1, 1e-4, Double.NEGATIVE_INFINITY})
  void polesThatAreNoneAreRefused(double pole) {
    Spectrum spectrum = noise(Source.Colour.WHITE, 20, 20_000);
    assertThatThrownBy(() -> spectrum.passedShare(100, pole))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("pole in hertz");
    assertThatThrownBy(() -> spectrum.centroidHertz(pole))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
