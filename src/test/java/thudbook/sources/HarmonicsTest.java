package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import thudbook.quantities.Frequency;

/** Reference and property tests of the harmonics of oscillators. */
class HarmonicsTest {
  private static List<Partial> harmonics(Source.Wave wave, double hertz, double duty) {
    return new Harmonics(new Source.Oscillator(wave, Frequency.ofHertz(hertz), duty, 5));
  }

  /** Reference: the textbook Fourier series of waves of peak 1, magnitudes at n = 1, 2, 3. */
  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 0.810569469, 0, 0.090063274",
    "SAWTOOTH, 0.636619772, 0.318309886, 0.212206591",
    "SQUARE, 1.273239545, 0, 0.424413182"
  })
  void magnitudesAreThoseOfTheTextbook(
      Source.Wave wave, double first, double second, double third) {
    double[] expected = {first, second, third};
    for (int n = 1; n <= 3; n++) {
      double hertz = 100.0 * n;
      double power =
          harmonics(wave, 100, 0.5).stream()
              .filter(each -> each.hertz() == hertz)
              .mapToDouble(Partial::power)
              .sum();
      assertThat(Math.sqrt(power)).isCloseTo(expected[n - 1], within(1e-9));
    }
  }

  @Test
  void aSineIsItsFundamental() {
    assertThat(harmonics(Source.Wave.SINE, 55, 0.5)).containsExactly(new Partial(55, 1, 0));
  }

  /**
   * Property: amplitudes and signs agree with an FFT of the wave. With the mean at every jump, the
   * sampled series differs from the true one by (πn/N)²/3 of it.
   */
  @Tag("long")
  @ParameterizedTest
  @EnumSource
  void harmonicsAgreeWithAnFft(Source.Wave wave) {
    int length = 1 << 16;
    for (int high : new int[] {length / 2, length / 4, 20_000, 1000}) {
      double duty = (double) high / length;
      Complex[] samples = new Complex[length];
      for (int i = 0; i < length; i++) {
        samples[i] =
            new Complex(Waves.oscillator(wave, duty, 2 * Math.PI * (i + length / 4.0) / length));
      }
      Complex[] bins =
          new FastFourierTransformer(DftNormalization.STANDARD)
              .transform(samples, TransformType.FORWARD);
      Complex[] expected = new Complex[41];
      for (int n = 1; n <= 40; n++) {
        // A sine of peak 1 has the bin N/(2j); sampling began a quarter of a cycle in.
        double turn = -Math.PI / 2 * n;
        expected[n] =
            bins[n]
                .multiply(new Complex(0, 2.0 / length))
                .multiply(new Complex(Math.cos(turn), Math.sin(turn)));
      }
      for (Partial partial : harmonics(wave, 500, duty)) {
        int n = (int) Math.round(partial.hertz() / 500);
        assertThat(partial.real()).isCloseTo(expected[n].getReal(), within(2e-6));
        assertThat(partial.imaginary()).isCloseTo(expected[n].getImaginary(), within(2e-6));
        expected[n] = Complex.ZERO;
      }
      for (int n = 1; n <= 40; n++) {
        assertThat(expected[n].norm()).as("harmonic %s is missing", n).isLessThan(2e-6);
      }
    }
  }

  /** Property: a pulse of half duty is a square; of duties d and 1 − d the powers are equal. */
  @Test
  void aPulseOfHalfDutyIsASquare() {
    List<Partial> pulse = harmonics(Source.Wave.PULSE, 100, 0.5);
    List<Partial> square = harmonics(Source.Wave.SQUARE, 100, 0.5);
    for (int n = 1; n <= 200; n++) {
      Partial each = pulse.get(n - 1);
      if (n % 2 == 0) {
        assertThat(each.power()).isLessThan(1e-30);
      } else {
        assertThat(each.real()).isCloseTo(square.get(n / 2).real(), within(1e-14));
        assertThat(each.imaginary()).isCloseTo(0, within(1e-14));
      }
    }
    List<Partial> narrow = harmonics(Source.Wave.PULSE, 100, 0.1);
    List<Partial> wide = harmonics(Source.Wave.PULSE, 100, 0.9);
    for (int i = 0; i < narrow.size(); i++) {
      assertThat(narrow.get(i).power()).isCloseTo(wide.get(i).power(), within(1e-14));
    }
  }

  /** Property: the power of all harmonics nears the mean square of the wave (Parseval). */
  @ParameterizedTest
  @CsvSource({
    "SINE, 0.5, 0.5",
    "TRIANGLE, 0.5, 0.3333333333",
    "SAWTOOTH, 0.5, 0.3333333333",
    "SQUARE, 0.5, 1",
    "PULSE, 0.2, 0.64"
  })
  void powersSumToTheMeanSquare(Source.Wave wave, double duty, double meanSquare) {
    // Of the pulse without its constant part 2d − 1: 1 − 0.36.
    double power = harmonics(wave, 0.2, duty).stream().mapToDouble(Partial::power).sum() / 2;
    assertThat(power).isCloseTo(meanSquare, within(2e-5));
  }

  @Test
  void harmonicsEndAt20KilohertzAndTheFundamentalIsAlwaysThere() {
    assertThat(harmonics(Source.Wave.SAWTOOTH, 20_000, 0.5)).hasSize(1);
    assertThat(harmonics(Source.Wave.SAWTOOTH, 10_000, 0.5)).hasSize(2);
    assertThat(harmonics(Source.Wave.SAWTOOTH, 10_000.1, 0.5)).hasSize(1);
    assertThat(harmonics(Source.Wave.SAWTOOTH, 20_000.0 / 3, 0.5)).hasSize(3);
    assertThat(harmonics(Source.Wave.SQUARE, 4000, 0.5)).hasSize(3);
    assertThat(harmonics(Source.Wave.SQUARE, 5000, 0.5)).hasSize(2);
    assertThat(harmonics(Source.Wave.SAWTOOTH, 0.01, 0.5)).hasSize(2_000_000);
  }

  @Test
  void thereIsNoHarmonicBeyondTheLast() {
    List<Partial> harmonics = harmonics(Source.Wave.SAWTOOTH, 10_000, 0.5);
    assertThatThrownBy(() -> harmonics.get(2)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> harmonics.get(-1)).isInstanceOf(IndexOutOfBoundsException.class);
  }
}
