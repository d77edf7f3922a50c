package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.hipparchus.complex.Complex;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thudbook.quantities.Frequency;

/** Reference and property tests of side frequencies, folded and merged. */
class SideFrequenciesTest {
  private static List<Partial> partials(
      double carrier, double modulator, Source.Wave wave, double index, Source.Phase phase) {
    Source source =
        new Source.FrequencyModulation(
            Frequency.ofHertz(carrier),
            new Modulator.Absolute(Frequency.ofHertz(modulator)),
            wave,
            index,
            phase,
            5);
    return ((LineSpectrum) Spectrum.of(source)).partials();
  }

  private static Partial at(List<Partial> partials, double hertz) {
    List<Partial> there =
        partials.stream().filter(each -> Math.abs(each.hertz() - hertz) < 1e-6).toList();
    assertThat(there).as("partials at %s Hz", hertz).hasSize(1);
    return there.get(0);
  }

  private static double power(List<Partial> partials) {
    return partials.stream().mapToDouble(Partial::power).sum();
  }

  /** Reference: 200 Hz by 280 Hz, index 2, signed amplitudes from an independent integration. */
  @Test
  void foldsTheWorkedExample() {
    List<Partial> partials = partials(200, 280, Source.Wave.SINE, 2, Source.Phase.LOCKED);
    Map.of(
            80, 0.576725,
            200, 0.223891,
            360, -0.352834,
            480, 0.576725,
            640, 0.128943,
            760, 0.352834)
        .forEach(
            (hertz, amplitude) ->
                assertThat(at(partials, hertz).real()).isCloseTo(amplitude, within(1e-6)));
  }

  /** Reference: 400 Hz by 400 Hz, index 4, which folds onto itself; the same integration. */
  @Test
  void mergesTheWorkedExample() {
    List<Partial> partials = partials(400, 400, Source.Wave.SINE, 4, Source.Phase.LOCKED);
    Map.of(400, -0.761278, 800, 0.364128, 1200, 0.082999, 1600, 0.562258)
        .forEach(
            (hertz, amplitude) ->
                assertThat(at(partials, hertz).real()).isCloseTo(amplitude, within(1e-6)));
    assertThat(partials).allMatch(each -> each.hertz() > 399);
  }

  /**
   * Property: a locked spectrum is the FFT of sin(2πf_c t + φ), carrier and modulator being whole
   * multiples of one frequency. A partial may lack a folded partner that was left out.
   */
  @Tag("long")
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void aLockedSpectrumIsTheFftOfItsWave(Source.Wave wave) {
    int length = 1 << 16;
    int[][] ratios = {{1, 1}, {2, 1}, {1, 2}, {3, 2}, {5, 7}, {7, 4}, {1, 9}, {10, 3}};
    double tolerance = wave == Source.Wave.SINE ? 1e-5 : 2e-5;
    for (int[] ratio : ratios) {
      for (double index : new double[] {0.4, 2, 7.5}) {
        Complex[] bins = spectrum(wave, ratio[0], ratio[1], index, length);
        List<Partial> partials =
            partials(100.0 * ratio[0], 100.0 * ratio[1], wave, index, Source.Phase.LOCKED);
        for (int k = 1; k < 200; k++) {
          double hertz = 100.0 * k;
          Complex sum =
              partials.stream()
                  .filter(each -> Math.abs(each.hertz() - hertz) < 1e-6)
                  .map(each -> new Complex(each.real(), each.imaginary()))
                  .reduce(Complex.ZERO, Complex::add);
          assertThat(sum.subtract(bins[k]).norm())
              .as("%s %s:%s index %s bin %s", wave, ratio[0], ratio[1], index, k)
              .isLessThan(tolerance);
        }
      }
    }
  }

  private static Complex[] spectrum(
      Source.Wave wave, int carrier, int modulator, double index, int length) {
    Complex[] samples = new Complex[length];
    for (int i = 0; i < length; i++) {
      double cycle = 2 * Math.PI * i / length;
      double phase = carrier * cycle + index * Waves.phase(wave, modulator * cycle);
      // A sine of peak 1 has the bin N/(2j).
      samples[i] = new Complex(0, 2 * Math.sin(phase) / length);
    }
    return new FastFourierTransformer(DftNormalization.STANDARD)
        .transform(samples, TransformType.FORWARD);
  }

  /** Property: folding moves power without loss when no two partials meet. */
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void powersSumToOneWhenNoPartialsMeet(Source.Wave wave) {
    Random random = new Random(5);
    for (int i = 0; i < 20; i++) {
      double carrier = 20 + 400 * random.nextDouble();
      double modulator = carrier * (0.1 + 3 * random.nextDouble());
      double index = 10 * random.nextDouble();
      List<Partial> locked = partials(carrier, modulator, wave, index, Source.Phase.LOCKED);
      List<Partial> free = partials(carrier, modulator, wave, index, Source.Phase.FREE);
      assertThat(power(locked)).isCloseTo(1, within(1.01e-10));
      assertThat(power(free)).isCloseTo(1, within(1.01e-10));
      assertThat(locked).isSortedAccordingTo(Comparator.comparingDouble(Partial::hertz));
    }
  }

  /** Property: free partials that meet add by power, which is the mean over all phases. */
  @Test
  void freePartialsAddByPower() {
    List<Partial> free = partials(400, 400, Source.Wave.SINE, 4, Source.Phase.FREE);
    SideAmplitudes sides = SideAmplitudes.of(Source.Wave.SINE, 4);
    for (int k = 1; k <= 4; k++) {
      double one = sides.at(k - 1).getReal();
      double other = sides.at(-k - 1).getReal();
      assertThat(at(free, 400 * k).power()).isCloseTo(one * one + other * other, within(1e-14));
    }
    double vanished = Math.pow(sides.at(-1).getReal(), 2);
    assertThat(power(free)).isCloseTo(1 - vanished, within(1.01e-10));
  }

  /** Property: a free spectrum is continuous where ratios are simple; a locked one need not be. */
  @Test
  void freePowerDoesNotJumpAtSimpleRatios() {
    double nearly = 400 * (1 + 1e-7);
    double[] pole = {700};
    for (Source.Wave wave : List.of(Source.Wave.SINE, Source.Wave.SQUARE, Source.Wave.SAWTOOTH)) {
      assertThat(share(600, 400, wave, Source.Phase.FREE, pole))
          .isCloseTo(share(600, nearly, wave, Source.Phase.FREE, pole), within(1e-6));
      assertThat(
              Math.abs(
                  share(600, 400, wave, Source.Phase.LOCKED, pole)
                      - share(600, nearly, wave, Source.Phase.LOCKED, pole)))
          .isGreaterThan(1e-3);
    }
  }

  private static double share(
      double carrier, double modulator, Source.Wave wave, Source.Phase phase, double... pole) {
    return Spectrum.of(
            new Source.FrequencyModulation(
                Frequency.ofHertz(carrier),
                new Modulator.Absolute(Frequency.ofHertz(modulator)),
                wave,
                3,
                phase,
                5))
        .passedShare(pole);
  }

  /** Property: partials nearer than 1e-9 of their frequency are one, others are two. */
  @Test
  void partialsMergeWithin1e9() {
    // 100 Hz by 100 Hz: the side −2 folds to 100 Hz. A modulator off by ε moves it by 2ε.
    assertThat(near(100, partials(100, 100 + 1e-9, Source.Wave.SINE, 2, Source.Phase.LOCKED)))
        .isEqualTo(1);
    assertThat(near(100, partials(100, 100 + 1e-6, Source.Wave.SINE, 2, Source.Phase.LOCKED)))
        .isEqualTo(2);
  }

  private static long near(double hertz, List<Partial> partials) {
    return partials.stream().filter(each -> Math.abs(each.hertz() - hertz) < 1e-3).count();
  }

  /** Property: a ratio that no double holds still folds exactly onto itself. */
  @Test
  void roundingOfARatioDoesNotSplitPartials() {
    Source.FrequencyModulation modulation =
        new Source.FrequencyModulation(
            new Frequency.Note("F#3"),
            new Modulator.Ratio(2.0 / 3),
            Source.Wave.SINE,
            5,
            Source.Phase.LOCKED,
            5);
    // Sides are multiples of a third of the carrier: f_c(3 + 2n)/3, all odd thirds.
    double third = modulation.carrier().hertz() / 3;
    List<Partial> partials = SideFrequencies.of(modulation);
    for (int i = 0; i < partials.size(); i++) {
      assertThat(partials.get(i).hertz() / third).isCloseTo(2 * i + 1, within(1e-9));
    }
  }

  /** Property: the sides have no upper limit in frequency. */
  @Test
  void sidesGoBeyond20Kilohertz() {
    List<Partial> partials = partials(15_000, 18_000, Source.Wave.SINE, 30, Source.Phase.LOCKED);
    assertThat(partials.get(partials.size() - 1).hertz()).isGreaterThan(500_000);
  }

  @Test
  void withoutIndexOnlyTheCarrierIsLeft() {
    for (Source.Phase phase : Source.Phase.values()) {
      assertThat(partials(300, 300, Source.Wave.SAWTOOTH, 0, phase))
          .containsExactly(new Partial(300, 1, 0));
    }
  }

  @Test
  void partialsRefuseWhatIsNone() {
    assertThatThrownBy(() -> new Partial(0, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Partial(Double.NaN, 1, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Partial(10, Double.NaN, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("NaN");
  }
}
