package thudbook.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thudbook.quantities.Frequency;

/**
 * Property: signs and phases by putting waves together again and by plain Fourier sums, condensed
 * lines by the law of Gauss rules, sums over few poles one by one, and the ends of all ranges.
 * Quick beside the transforms of the other tests.
 */
class SignsAndEdgesTest {
  private static Frequency hertz(double hertz) {
    return Frequency.ofHertz(hertz);
  }

  private static Source.FrequencyModulation modulation(
      double carrier, double modulator, Source.Wave wave, double index, Source.Phase phase) {
    return new Source.FrequencyModulation(
        hertz(carrier), new Modulator.Absolute(hertz(modulator)), wave, index, phase, 5);
  }

  /** A wave is the sum of its harmonics, the imaginary part of Σ c·e^{jnθ}. */
  @ParameterizedTest
  @EnumSource
  void harmonicsSumToTheirWave(Source.Wave wave) {
    for (double duty : new double[] {0.2, 0.5, 0.7}) {
      List<Partial> harmonics = new Harmonics(new Source.Oscillator(wave, hertz(10), duty, 5));
      for (double theta : new double[] {0.3, 1, 1.7, 2.8, -0.4, -1.3, -2.5}) {
        double mean = wave == Source.Wave.PULSE ? 2 * duty - 1 : 0;
        double sum = mean;
        for (Partial each : harmonics) {
          double angle = each.hertz() / 10 * theta;
          sum += each.real() * Math.sin(angle) + each.imaginary() * Math.cos(angle);
        }
        assertThat(sum)
            .as("%s of duty %s at %s", wave, duty, theta)
            .isCloseTo(Waves.oscillator(wave, duty, theta), within(5e-3));
      }
    }
  }

  /** c_n is the mean of e^{jφ}·e^{−jnθ} over a cycle: a plain sum over 4,096 points. */
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void sideAmplitudesAreFourierSums(Source.Wave wave) {
    for (double index : new double[] {0.5, 2, 7.3}) {
      SideAmplitudes sides = SideAmplitudes.of(wave, index);
      int most = Math.min(7, sides.highest());
      for (int n = -most; n <= most; n++) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < 4096; i++) {
          double theta = 2 * Math.PI * i / 4096;
          double angle = index * Waves.phase(wave, theta) - n * theta;
          real += Math.cos(angle) / 4096;
          imaginary += Math.sin(angle) / 4096;
        }
        Complex found = sides.at(n);
        assertThat(found.getReal()).as("%s %s", wave, n).isCloseTo(real, within(1e-5));
        assertThat(found.getImaginary()).as("%s %s", wave, n).isCloseTo(imaginary, within(1e-5));
      }
    }
  }

  /** Locked partials that meet add with their phases: a plain sum over one cycle of the wave. */
  @ParameterizedTest
  @EnumSource(names = "PULSE", mode = EnumSource.Mode.EXCLUDE)
  void foldedPartialsAddWithTheirPhases(Source.Wave wave) {
    int[][] ratios = {{1, 1}, {3, 2}, {2, 5}};
    for (int[] ratio : ratios) {
      List<Partial> partials =
          SideFrequencies.of(
              modulation(100.0 * ratio[0], 100.0 * ratio[1], wave, 3.4, Source.Phase.LOCKED));
      for (int k = 1; k <= 12; k++) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < 8192; i++) {
          double theta = 2 * Math.PI * i / 8192;
          double value =
              Math.sin(ratio[0] * theta + 3.4 * Waves.phase(wave, ratio[1] * theta)) / 4096;
          real += value * Math.sin(k * theta);
          imaginary += value * Math.cos(k * theta);
        }
        double wanted = 100.0 * k;
        double foundReal = 0;
        double foundImaginary = 0;
        for (Partial each : partials) {
          if (Math.abs(each.hertz() - wanted) < 1e-6) {
            foundReal += each.real();
            foundImaginary += each.imaginary();
          }
        }
        assertThat(foundReal).as("%s bin %s", wave, k).isCloseTo(real, within(3e-5));
        assertThat(foundImaginary).as("%s bin %s", wave, k).isCloseTo(imaginary, within(3e-5));
      }
    }
  }

  /** A side within 1e-9 of the carrier beside 0 Hz is a constant and vanishes, on either side. */
  @Test
  void aSideAtZeroHertzVanishes() {
    for (double off : new double[] {1e-12, -1e-12}) {
      List<Partial> partials =
          SideFrequencies.of(
              modulation(10_000, 10_000 * (1 + off), Source.Wave.SINE, 2, Source.Phase.LOCKED));
      assertThat(partials).allMatch(each -> each.hertz() > 9_000);
    }
    List<Partial> apart =
        SideFrequencies.of(
            modulation(10_000, 10_000 * (1 + 1e-6), Source.Wave.SINE, 2, Source.Phase.LOCKED));
    assertThat(apart.get(0).hertz()).isCloseTo(0.01, within(1e-6));
  }

  @ParameterizedTest
  @EnumSource(names = {"SAWTOOTH", "PULSE"})
  void poleByPoleTheSumIsThatOverTheLines(Source.Wave wave) {
    LineSpectrum spectrum =
        (LineSpectrum) Spectrum.of(new Source.Oscillator(wave, hertz(700), 0.3, 5));
    double[] all = {300, 900, 1500, 4000, 9000};
    for (int count = 0; count <= 5; count++) {
      double[] poles = Arrays.copyOf(all, count);
      double total = 0;
      double passed = 0;
      double moment = 0;
      for (Partial each : spectrum.partials()) {
        double part = each.power() * Quadrature.passed(each.hertz(), poles);
        total += each.power();
        passed += part;
        moment += part * each.hertz();
      }
      assertThat(spectrum.passedShare(poles)).isCloseTo(passed / total, within(1e-12));
      assertThat(spectrum.centroidHertz(poles)).isCloseTo(moment / passed, within(1e-7));
    }
  }

  /** Lines far apart are kept as they are, however many. */
  @Test
  void linesFarApartAreKept() {
    List<Partial> lines = new ArrayList<>();
    for (int i = 0; i < 700; i++) {
      lines.add(new Partial(Math.exp(0.03 * i), 1 + i % 3, 0));
    }
    LineRule rule = new LineRule(lines);
    assertThat(rule.hertz()).hasSize(700);
    for (int i = 0; i < 700; i++) {
      assertThat(rule.hertz()[i] / lines.get(i).hertz()).isCloseTo(1, within(1e-13));
      assertThat(rule.power()[i]).isEqualTo(lines.get(i).power());
    }
  }

  /** Gauss's law: 8 nodes give every moment up to degree 15, here in ln f. */
  @Test
  void condensedLinesKeepTheirMoments() {
    Random random = new Random(71);
    List<Partial> lines = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      lines.add(new Partial(1000 * Math.exp(0.3 * i / 99), 0.2 + random.nextDouble(), 0));
    }
    LineRule rule = new LineRule(lines);
    assertThat(rule.hertz()).hasSize(8);
    for (int degree = 0; degree <= 15; degree++) {
      double expected = 0;
      double found = 0;
      for (Partial line : lines) {
        expected += line.power() * Math.pow(Math.log(line.hertz() / 1000) / 0.3, degree);
      }
      for (int i = 0; i < 8; i++) {
        found += rule.power()[i] * Math.pow(Math.log(rule.hertz()[i] / 1000) / 0.3, degree);
      }
      assertThat(found / expected).as("degree %s", degree).isCloseTo(1, within(1e-11));
    }
  }

  /** Where many lines lie on three frequencies, three nodes are all there are. */
  @Test
  void linesOnFewFrequenciesAreTheirOwnNodes() {
    List<Partial> lines = new ArrayList<>();
    for (double hertz : new double[] {1000, 1100, 1300}) {
      for (int i = 0; i < 7; i++) {
        lines.add(new Partial(hertz, 1, 0));
      }
    }
    LineRule rule = new LineRule(lines);
    assertThat(rule.hertz()).hasSize(3);
    double[] sorted = rule.hertz();
    Arrays.sort(sorted);
    assertThat(sorted[0]).isCloseTo(1000, within(1e-8));
    assertThat(sorted[1]).isCloseTo(1100, within(1e-8));
    assertThat(sorted[2]).isCloseTo(1300, within(1e-8));
    assertThat(Arrays.stream(rule.power()).sum()).isCloseTo(21, within(1e-9));
    assertThat(Arrays.stream(rule.power()).min().orElseThrow()).isCloseTo(7, within(1e-9));
  }

  private static void refused(String words, ThrowingCallable call) {
    assertThatIllegalArgumentException().isThrownBy(call).withMessageContaining(words);
  }

  @Test
  void theEndsOfEveryRangeAreTaken() {
    Source.Colour white = Source.Colour.WHITE;
    assertThat(new Source.Noise(white, 0.01, 20_000, 20).levelVolts()).isEqualTo(20);
    refused("from", () -> new Source.Noise(white, 0.009, 100, 5));
    refused("to", () -> new Source.Noise(white, 20, 20_001, 5));
    refused("below", () -> new Source.Noise(white, 100, 100, 5));
    refused("below", () -> new Source.Noise(white, 101, 100, 5));
    refused("level", () -> new Source.Noise(white, 20, 100, 0.9e-3));
    Source.Wave pulse = Source.Wave.PULSE;
    new Source.Oscillator(pulse, hertz(100), 0.01, 1e-3);
    new Source.Oscillator(pulse, hertz(100), 0.99, 20);
    refused("duty", () -> new Source.Oscillator(pulse, hertz(100), 0.009, 5));
    refused("duty", () -> new Source.Oscillator(pulse, hertz(100), 0.991, 5));
    refused("level", () -> new Source.Oscillator(pulse, hertz(100), 0.5, 20.1));
    refused("wave", () -> modulation(100, 100, pulse, 1, Source.Phase.FREE));
    assertThat(modulation(100, 100, Source.Wave.SINE, 50, Source.Phase.FREE).index()).isEqualTo(50);
    refused("index", () -> modulation(100, 100, Source.Wave.SINE, 50.1, Source.Phase.FREE));
    refused("index", () -> modulation(100, 100, Source.Wave.SINE, -0.1, Source.Phase.FREE));
    refused("ratio", () -> new Modulator.Ratio(0.9e-6));
    refused("ratio", () -> new Modulator.Ratio(1.1e6));
    refused("modulator", () -> ratio(1000, 20.1, 5));
    refused("modulator", () -> ratio(1000, 0.9e-5, 5));
    refused("level", () -> ratio(1000, 1, 21));
    assertThat(ratio(1000, 1.5, 5).modulatorHertz()).isEqualTo(1500);
  }

  private static Source.FrequencyModulation ratio(double carrier, double ratio, double level) {
    return new Source.FrequencyModulation(
        hertz(carrier), new Modulator.Ratio(ratio), Source.Wave.SINE, 1, Source.Phase.FREE, level);
  }
}
