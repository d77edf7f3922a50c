package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thudbook.quantities.Frequency;

/** Reference and property tests of partials behind poles. */
class LineSpectrumTest {
  private static Source.Oscillator oscillator(Source.Wave wave, double hertz, double duty) {
    return new Source.Oscillator(wave, Frequency.ofHertz(hertz), duty, 5);
  }

  private static Source.FrequencyModulation modulation(
      double carrier, double modulator, Source.Wave wave, double index) {
    return new Source.FrequencyModulation(
        Frequency.ofHertz(carrier),
        new Modulator.Absolute(Frequency.ofHertz(modulator)),
        wave,
        index,
        Source.Phase.LOCKED,
        5);
  }

  private static double sineDb(double hertz, double... poleHertz) {
    Spectrum sine = Spectrum.of(oscillator(Source.Wave.SINE, hertz, 0.5));
    return 10 * Math.log10(sine.passedShare(poleHertz));
  }

  /** Reference: levels at the cutoff and slopes of one pole and of two equal ones (textbook). */
  @Test
  void polesHaveTheirTextbookLevelsAndSlopes() {
    assertThat(sineDb(1000, 1000)).isCloseTo(-3.0103, within(5e-5));
    assertThat(sineDb(1000, 1000, 1000)).isCloseTo(-6.0206, within(5e-5));
    assertThat(sineDb(643.594, 1000, 1000)).isCloseTo(-3.0103, within(5e-5));
    assertThat(sineDb(20_000, 1) - sineDb(10_000, 1)).isCloseTo(-6.02, within(5e-3));
    assertThat(sineDb(20_000, 1, 1) - sineDb(10_000, 1, 1)).isCloseTo(-12.04, within(5e-3));
  }

  /**
   * Reference: Σ 1/(n²(1 + (n/P)²)) = π²/6 − (πP coth πP − 1)/(2P²), from the partial fractions of
   * the hyperbolic cotangent (DLMF 4.36). Above 20 kHz a sawtooth of 0.5 Hz lacks 1.5e-5 of its
   * power, and nothing of what passes.
   */
  @Test
  void aFilteredSawtoothHasItsClosedForm() {
    Spectrum sawtooth = Spectrum.of(oscillator(Source.Wave.SAWTOOTH, 0.5, 0.5));
    double all = 0;
    for (int n = 40_000; n >= 1; n--) {
      all += 1.0 / n / n;
    }
    for (double pole : new double[] {0.5, 3, 20}) {
      double ratio = pole / 0.5;
      double passed =
          Math.PI * Math.PI / 6
              - (Math.PI * ratio / Math.tanh(Math.PI * ratio) - 1) / (2 * ratio * ratio);
      assertThat(sawtooth.passedShare(pole)).isCloseTo(passed / all, within(1e-10));
    }
  }

  /** Property: condensed or not, what passes is the sum over all partials; seeded random cases. */
  @Tag("long")
  @ParameterizedTest
  @EnumSource
  void whatPassesIsTheSumOverAllPartials(Source.Wave wave) {
    Random random = new Random(401);
    for (int i = 0; i < 60; i++) {
      double duty = 0.01 + 0.98 * random.nextDouble();
      compareWithPlainSum(oscillator(wave, Math.pow(10, 4.3 * random.nextDouble()), duty), random);
      if (wave != Source.Wave.PULSE) {
        double carrier = Math.pow(10, 4.3 * random.nextDouble());
        double modulator = Math.pow(10, 4.3 * random.nextDouble());
        double index = 50 * Math.pow(random.nextDouble(), 3);
        compareWithPlainSum(modulation(carrier, modulator, wave, index), random);
      }
    }
  }

  private static void compareWithPlainSum(Source source, Random random) {
    LineSpectrum spectrum = (LineSpectrum) Spectrum.of(source);
    double[] poles = new double[random.nextInt(9)];
    Arrays.setAll(poles, each -> 0.01 * Math.pow(2e10, random.nextDouble()));
    double all = 0;
    double passed = 0;
    double moment = 0;
    for (Partial partial : spectrum.partials()) {
      double part = partial.power() * Quadrature.passed(partial.hertz(), poles);
      all += partial.power();
      passed += part;
      moment += part * partial.hertz();
    }
    String what = source + " " + Arrays.toString(poles);
    double tolerance = poles.length <= 2 ? 1e-11 : 1e-9;
    assertThat(spectrum.passedShare(poles) / (passed / all))
        .as(what)
        .isCloseTo(1, within(tolerance));
    assertThat(spectrum.centroidHertz(poles) / (moment / passed))
        .as(what)
        .isCloseTo(1, within(tolerance));
  }

  /**
   * Property: sides in one narrow block, far above eight equal poles, are the rule's hardest case.
   */
  @Test
  void aNarrowBlockFarAboveEightPolesIsSummedRight() {
    LineSpectrum spectrum = (LineSpectrum) Spectrum.of(modulation(5000, 1, Source.Wave.SQUARE, 50));
    double[] poles = new double[8];
    Arrays.fill(poles, 1);
    double all = 0;
    double passed = 0;
    for (Partial partial : spectrum.partials()) {
      all += partial.power();
      passed += partial.power() * Quadrature.passed(partial.hertz(), poles);
    }
    assertThat(spectrum.passedShare(poles) / (passed / all)).isCloseTo(1, within(1e-8));
  }

  /** Property: very many partials are condensed to few that lie among them and keep their power. */
  @Test
  void veryManyPartialsAreSummedByFew() {
    List<Partial> many = new Harmonics(oscillator(Source.Wave.SAWTOOTH, 0.1, 0.5));
    assertThat(many).hasSize(200_000);
    LineRule rule = new LineRule(many);
    assertThat(rule.hertz().length).isLessThan(300);
    double power = many.stream().mapToDouble(Partial::power).sum();
    assertThat(Arrays.stream(rule.power()).sum()).isCloseTo(power, within(1e-12));
    assertThat(Arrays.stream(rule.hertz())).allMatch(each -> each > 0.099 && each < 20_001);
    assertThat(Arrays.stream(rule.power())).allMatch(each -> each > 0);
  }

  @Test
  void polesFarAboveAllPartialsPassEverything() {
    double infinity = Double.POSITIVE_INFINITY;
    Spectrum square = Spectrum.of(oscillator(Source.Wave.SQUARE, 110, 0.5));
    assertThat(square.passedShare()).isEqualTo(1);
    assertThat(square.passedShare(infinity)).isCloseTo(1, within(1e-15));
    assertThat(square.passedShare(Double.MAX_VALUE, infinity)).isCloseTo(1, within(1e-15));
    assertThat(square.passedShare(500, infinity)).isEqualTo(square.passedShare(500));
    assertThat(square.passedShare(500, infinity, infinity, 700))
        .isCloseTo(square.passedShare(500, 700), within(1e-15));
    assertThat(square.centroidHertz(500, infinity)).isEqualTo(square.centroidHertz(500));
  }

  /** Property: the brightness of a sine is its frequency, through any poles. */
  @Test
  void theCentroidOfASineIsItsFrequency() {
    Spectrum sine = Spectrum.of(oscillator(Source.Wave.SINE, 55, 0.5));
    assertThat(sine.centroidHertz()).isCloseTo(55, within(1e-12));
    assertThat(sine.centroidHertz(0.001, 0.001, 0.001, 0.001, 0.001, 0.001, 0.001, 0.001))
        .isCloseTo(55, within(1e-12));
  }

  /** Property: strong means within 20 dB of the strongest. */
  @Test
  void theLowestStrongPartialIsWithin20DbOfTheStrongest() {
    assertThat(Spectrum.of(oscillator(Source.Wave.SAWTOOTH, 110, 0.5)).lowestStrongHertz())
        .isEqualTo(110);
    // Index 0.15: the sides have J₁ = 0.0748, −22.4 dB re the carrier; index 0.25: −17.9 dB.
    assertThat(Spectrum.of(modulation(500, 90, Source.Wave.SINE, 0.15)).lowestStrongHertz())
        .isEqualTo(500);
    assertThat(Spectrum.of(modulation(500, 90, Source.Wave.SINE, 0.25)).lowestStrongHertz())
        .isEqualTo(410);
    // Folded: 200 − 280 Hz.
    assertThat(Spectrum.of(modulation(200, 280, Source.Wave.SINE, 2)).lowestStrongHertz())
        .isEqualTo(80);
  }

  @Test
  void polesThatAreNoneAreRefused() {
    Spectrum sine = Spectrum.of(oscillator(Source.Wave.SINE, 55, 0.5));
    for (double pole : new double[] {Double.NaN, 0, -5}) {
      assertThatThrownBy(() -> sine.passedShare(pole))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("pole in hertz");
      assertThatThrownBy(() -> sine.centroidHertz(20, pole))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
