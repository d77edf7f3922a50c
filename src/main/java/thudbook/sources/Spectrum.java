package thudbook.sources;

import thudbook.quantities.Check;

/**
 * The power of a source over frequency, and what is left of it behind low-pass poles. A pole at f_p
 * passes |H(f)|² = 1/(1 + (f/f_p)²) of the power at f; the poles of a chain multiply.
 *
 * <p>Spectra are immutable and safe for many threads. Their two sums are made to be asked thousands
 * of times for one prediction: they allocate next to nothing and divide once per frequency.
 */
public sealed interface Spectrum permits LineSpectrum, NoiseSpectrum {
  /** The lowest pole that the sums take, in hertz; far below any filter of this trade. */
  double LOWEST_POLE_HERTZ = 1e-3;

  /**
   * The spectrum of a source.
   *
   * @param source any source
   * @return its spectrum; harmonics up to 20 kHz, side frequencies without limit
   */
  static Spectrum of(Source source) {
    if (source instanceof Source.Noise noise) {
      return new NoiseSpectrum(noise);
    } else if (source instanceof Source.Oscillator oscillator) {
      return LineSpectrum.of(oscillator);
    } else if (source instanceof Source.FrequencyModulation modulation) {
      return LineSpectrum.of(modulation);
    }
    throw new IllegalArgumentException("no spectrum is known of " + source);
  }

  /**
   * The share of the power that passes: Σ P_k ∏ |H(f_k)|² / Σ P_k, for noise the integral over its
   * band.
   *
   * @param poleHertz the poles of the whole chain, any number (none: 1), each at least 1 mHz;
   *     infinity is a pole that passes everything
   * @return 0 to 1
   * @throws IllegalArgumentException if a pole is NaN or below 1 mHz
   */
  double passedShare(double... poleHertz);

  /**
   * The power-weighted mean frequency of what passes, in hertz: the brightness.
   *
   * @param poleHertz as in {@link #passedShare}
   * @throws IllegalArgumentException if a pole is NaN or below 1 mHz
   */
  double centroidHertz(double... poleHertz);

  /**
   * The lowest partial within 20 dB of the strongest one, in hertz. Times of a tone that are
   * shorter than two periods of it describe the envelope only. Noise has no partials and no such
   * times: for it this is infinite.
   */
  double lowestStrongHertz();

  /** Refuses poles that the sums can't take. */
  static void checkPoles(double... poleHertz) {
    for (double pole : poleHertz) {
      Check.inRange("pole in hertz", pole, LOWEST_POLE_HERTZ, Double.POSITIVE_INFINITY);
    }
  }

  /** 1/p² of poles in hertz; 0 for a pole that passes everything. */
  static double[] inverseSquares(double... poleHertz) {
    double[] inverse = new double[poleHertz.length];
    for (int i = 0; i < inverse.length; i++) {
      inverse[i] = 1 / (poleHertz[i] * poleHertz[i]);
    }
    return inverse;
  }
}
