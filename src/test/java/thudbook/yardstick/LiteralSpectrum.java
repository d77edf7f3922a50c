package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import thudbook.sources.Source;

/**
 * A source as a list of frequencies and powers, noise as the nodes of Simpson's rule in ln f (step
 * 0.01: 1e-10 for one-pole and two-pole responses). Everything is a plain sum over the list.
 */
public final class LiteralSpectrum {
  private final List<double[]> partials = new ArrayList<>();
  private double total;

  /** The spectrum of a source; of frequency modulation only with a sine as modulator. */
  public LiteralSpectrum(Source source) {
    if (source instanceof Source.Noise noise) {
      noise(noise);
    } else if (source instanceof Source.Oscillator oscillator) {
      double hertz = oscillator.frequency().hertz();
      for (int n = 1; n == 1 || n * hertz <= 20_000; n++) {
        if (oscillator.wave() != Source.Wave.SINE || n == 1) {
          add(n * hertz, power(oscillator, n));
        }
      }
    } else if (source instanceof Source.FrequencyModulation modulation) {
      modulated(modulation);
    }
  }

  private void add(double hertz, double power) {
    if (power > 0) {
      partials.add(new double[] {hertz, power});
      total += power;
    }
  }

  private void noise(Source.Noise noise) {
    double low = Math.log(noise.fromHertz());
    double high = Math.log(noise.toHertz());
    int steps = 2 * (int) Math.ceil((high - low) / 0.02);
    for (int i = 0; i <= steps; i++) {
      double hertz = Math.exp(low + (high - low) * i / steps);
      double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
      add(hertz, weight * (noise.colour() == Source.Colour.WHITE ? hertz : 1));
    }
  }

  /** Fourier series of the waves, amplitudes relative. */
  private static double power(Source.Oscillator oscillator, int n) {
    double amplitude =
        switch (oscillator.wave()) {
          case SINE -> 1;
          case TRIANGLE -> n % 2 == 0 ? 0 : 1.0 / n / n;
          case SAWTOOTH -> 1.0 / n;
          case SQUARE -> n % 2 == 0 ? 0 : 1.0 / n;
          case PULSE -> Math.sin(Math.PI * n * oscillator.duty()) / n;
        };
    return amplitude * amplitude;
  }

  private void modulated(Source.FrequencyModulation modulation) {
    if (modulation.wave() != Source.Wave.SINE) {
      throw new IllegalArgumentException("only sine modulators are written down here");
    }
    double carrier = modulation.carrier().hertz();
    int most = (int) Math.ceil(modulation.index()) + 40;
    List<double[]> signed = new ArrayList<>();
    for (int n = -most; n <= most; n++) {
      double hertz = carrier + n * modulation.modulatorHertz();
      double amplitude = mean(modulation.index(), n);
      double[] partial = {Math.abs(hertz), hertz < 0 ? -amplitude : amplitude};
      if (Math.abs(hertz) < 1e-9 * carrier) {
        continue;
      }
      double[] same =
          signed.stream()
              .filter(p -> Math.abs(p[0] - partial[0]) < 1e-9 * partial[0])
              .findFirst()
              .orElse(null);
      if (same == null || modulation.phase() == Source.Phase.FREE) {
        signed.add(partial);
      } else {
        same[1] += partial[1];
      }
    }
    signed.forEach(p -> add(p[0], p[1] * p[1]));
  }

  /** The mean of cos(I sin θ − nθ) over a cycle: J_n(I), to rounding with 512 points. */
  private static double mean(double index, int n) {
    int points = 512;
    double sum = 0;
    for (int i = 0; i < points; i++) {
      double theta = 2 * Math.PI * i / points;
      sum += Math.cos(index * Math.sin(theta) - n * theta);
    }
    return sum / points;
  }

  /** Σ P ∏|H|² / Σ P. */
  public double passedShare(double... poleHertz) {
    return sum(f -> 1, poleHertz) / total;
  }

  /** The power-weighted mean frequency of what passes. */
  public double centroidHertz(double... poleHertz) {
    return sum(f -> f, poleHertz) / sum(f -> 1, poleHertz);
  }

  /** The lowest partial within 20 dB of the strongest one. */
  public double lowestStrongHertz() {
    double strongest = partials.stream().mapToDouble(p -> p[1]).max().orElseThrow();
    return partials.stream()
        .filter(p -> p[1] >= strongest / 100)
        .mapToDouble(p -> p[0])
        .min()
        .orElseThrow();
  }

  private double sum(DoubleUnaryOperator weight, double... poleHertz) {
    double sum = 0;
    for (double[] partial : partials) {
      double f = partial[0];
      double passed = partial[1];
      for (double pole : poleHertz) {
        passed /= 1 + (f / pole) * (f / pole);
      }
      sum += weight.applyAsDouble(f) * passed;
    }
    return sum;
  }
}
