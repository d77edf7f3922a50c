package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.hipparchus.complex.Complex;
import org.hipparchus.special.BesselJ;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference and property tests of the side amplitudes of every modulator wave. */
class SideAmplitudesTest {
  private static final Set<Source.Wave> WAVES = EnumSet.complementOf(EnumSet.of(Source.Wave.PULSE));

  /**
   * Reference: J_n(x) to ten digits, as mpmath's besselj gives them; they are printed in Abramowitz
   * &amp; Stegun, tables 9.1, 9.2 (numbers of the tables from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0.7651976866",
    "1, 1, 0.4400505857",
    "1, 2, 0.1149034849",
    "2, 0, 0.2238907791",
    "2, 1, 0.5767248078",
    "2, 2, 0.3528340286",
    "2, 3, 0.1289432495",
    "4, 4, 0.2811290650",
    "5, 0, -0.1775967713",
    "5, 1, -0.3275791376",
    "5, 5, 0.2611405461",
    "10, 0, -0.2459357645",
    "10, 1, 0.0434727462",
    "10, 2, 0.2546303137",
    "10, 10, 0.2074861066",
    "50, 0, 0.0558123277",
    "50, 1, -0.0975118281"
  })
  void sineModulationGivesThePrintedBesselFunctions(double index, int n, double value) {
    SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SINE, index);
    assertThat(sides.at(n).getReal()).isCloseTo(value, within(6e-11));
    // J_−n = (−1)^n J_n, DLMF 10.4.1.
    assertThat(sides.at(-n).getReal()).isCloseTo(n % 2 == 0 ? value : -value, within(6e-11));
    assertThat(sides.at(n).getImaginary()).isZero();
  }

  /**
   * Reference: zeros of J₀ and J₁, and J₁ at the zeros of J₀, as mpmath's besselj gives them; they
   * are printed in Abramowitz &amp; Stegun, table 9.5 (number from memory). At such an index the
   * carrier itself vanishes.
   */
  @Test
  void carrierAndFirstSidesVanishAtThePrintedZeros() {
    assertThat(sine(2.4048255577, 0)).isCloseTo(0, within(1e-10));
    assertThat(sine(5.5200781103, 0)).isCloseTo(0, within(1e-10));
    assertThat(sine(8.6537279129, 0)).isCloseTo(0, within(1e-10));
    assertThat(sine(3.8317059702, 1)).isCloseTo(0, within(1e-10));
    assertThat(sine(7.0155866698, 1)).isCloseTo(0, within(1e-10));
    assertThat(sine(2.4048255577, 1)).isCloseTo(0.5191474973, within(1e-10));
    assertThat(sine(5.5200781103, 1)).isCloseTo(-0.3402648065, within(1e-10));
  }

  private static double sine(double index, int n) {
    return SideAmplitudes.of(Source.Wave.SINE, index).at(n).getReal();
  }

  /** Reference: the library's J_n one order at a time, and its recurrence (DLMF 10.6.1). */
  @Test
  void sineModulationGivesTheLibrarysBesselFunctions() {
    Random random = new Random(91);
    for (int i = 0; i < 100; i++) {
      double index = 50 * random.nextDouble();
      SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SINE, index);
      for (int n = 0; n <= sides.highest(); n++) {
        assertThat(sides.at(n).getReal()).isCloseTo(BesselJ.value(n, index), within(1e-13));
        if (n > 0 && n < sides.highest()) {
          assertThat(sides.at(n - 1).getReal() + sides.at(n + 1).getReal())
              .isCloseTo(2 * n / index * sides.at(n).getReal(), within(2e-13 * (1 + n / index)));
        }
      }
    }
  }

  /** Reference: Carson's rule, 98 % of the power within the carrier ± (I + 1) modulators. */
  @Test
  void carsonsBandwidthHolds98Percent() {
    for (int index = 1; index <= 50; index++) {
      SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SINE, index);
      double power = 0;
      for (int n = -index - 1; n <= index + 1; n++) {
        power += power(sides.at(n));
      }
      assertThat(power).as("index %s", index).isBetween(0.98, 1.0);
    }
  }

  /** Reference: |c₀..c₆| of square modulation at index 2, from an independent integration. */
  @Test
  void squareModulationGivesItsWorkedExample() {
    double[] expected = {0, 0.4244131816, 0.5, 0.2546479089, 0, 0.0606304545, 0};
    SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SQUARE, 2);
    for (int n = 0; n < expected.length; n++) {
      assertThat(Math.abs(sides.at(n).getReal())).isCloseTo(expected[n], within(1e-10));
      assertThat(Math.abs(sides.at(-n).getReal())).isCloseTo(expected[n], within(1e-10));
    }
  }

  /** Property: the closed form of the model's description, written differently: |I²−n²| at once. */
  @Test
  void squareModulationHasItsClosedForm() {
    for (double index : new double[] {0.3, 1, 1.7, 4, 9.999, 31, 50}) {
      SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SQUARE, index);
      for (int n = 0; n <= sides.highest(); n++) {
        double expected =
            n == index
                ? 0.5
                : 2
                    / Math.PI
                    * index
                    * Math.abs(Math.sin(Math.PI * (index - n) / 2))
                    / Math.abs((index - n) * (index + n));
        assertThat(Math.abs(sides.at(n).getReal())).isCloseTo(expected, within(1e-13));
      }
    }
  }

  /** Property: near a whole index the square's closed form passes over its pole without a jump. */
  @Test
  void squareModulationIsSmoothAtWholeIndices() {
    for (int n = 1; n <= 50; n++) {
      double whole = SideAmplitudes.of(Source.Wave.SQUARE, n).at(n).getReal();
      for (double apart = 1e-3; apart > 1e-15; apart /= 10) {
        for (double index : new double[] {n - apart, Math.min(50, n + apart)}) {
          assertThat(SideAmplitudes.of(Source.Wave.SQUARE, index).at(n).getReal())
              .isCloseTo(whole, within(apart));
        }
      }
    }
  }

  /**
   * Property: every wave agrees with an FFT of e^{jφ(θ)}, φ as the model defines it. Corners lie on
   * the grid, so that the error of the plain FFT falls with its length squared and two lengths
   * remove it.
   */
  @Tag("long")
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void everyWaveAgreesWithAnFft(Source.Wave wave) {
    for (double index : new double[] {0, 1e-4, 0.01, 0.5, 1, 2, 3.3, 7, 20, 50}) {
      Complex[] coarse = transform(wave, index, 1 << 15);
      Complex[] fine = transform(wave, index, 1 << 16);
      SideAmplitudes sides = SideAmplitudes.of(wave, index);
      int most = Math.min(300, sides.highest());
      for (int n = -most; n <= most; n++) {
        Complex plain = coarse[Math.floorMod(n, coarse.length)];
        Complex expected =
            fine[Math.floorMod(n, fine.length)].multiply(4).subtract(plain).divide(3);
        assertThat(sides.at(n).subtract(expected).norm())
            .as("%s, index %s, n %s", wave, index, n)
            .isLessThan(1e-11);
      }
    }
  }

  private static Complex[] transform(Source.Wave wave, double index, int length) {
    Complex[] samples = new Complex[length];
    for (int i = 0; i < length; i++) {
      double phase = index * Waves.phase(wave, 2 * Math.PI * i / length);
      samples[i] = new Complex(Math.cos(phase), Math.sin(phase)).divide(length);
    }
    return new FastFourierTransformer(DftNormalization.STANDARD)
        .transform(samples, TransformType.FORWARD);
  }

  /** Property: Σ|c_n|² = 1 (Parseval) but for the omitted power, and no side too many is kept. */
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void powersSumToOneAndNoSideTooManyIsKept(Source.Wave wave) {
    Random random = new Random(17);
    for (int i = 0; i < 60; i++) {
      double index = 50 * Math.pow(10, -9 * random.nextDouble());
      SideAmplitudes sides = SideAmplitudes.of(wave, index);
      double power = 0;
      for (int n = -sides.highest(); n <= sides.highest(); n++) {
        power += power(sides.at(n));
      }
      assertThat(1 - power).as("index %s", index).isBetween(-1e-12, 1e-10 + 1e-12);
      if (sides.highest() > 0) {
        double last = power(sides.at(sides.highest())) + power(sides.at(-sides.highest()));
        assertThat(1 - power + last).as("index %s", index).isGreaterThan(1e-10 - 1e-12);
      }
    }
  }

  private static double power(Complex c) {
    return c.getReal() * c.getReal() + c.getImaginary() * c.getImaginary();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, Double.MIN_VALUE, 1e-12})
  void withoutIndexOnlyTheCarrierIsLeft(double index) {
    for (Source.Wave wave : WAVES) {
      SideAmplitudes sides = SideAmplitudes.of(wave, index);
      assertThat(sides.highest()).isZero();
      assertThat(sides.at(0)).isEqualTo(Complex.ONE);
    }
  }

  @Test
  void aPulseDoesNotModulate() {
    assertThatThrownBy(() -> SideAmplitudes.of(Source.Wave.PULSE, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
