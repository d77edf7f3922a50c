package thudbook.sources;

/**
 * The power of a source over frequency, and what is left of it behind low-pass poles. A pole at f_p
 * passes |H(f)|² = 1/(1 + (f/f_p)²) of the power at f; the poles of a chain multiply.
 */
public interface Spectrum {
  /**
   * The spectrum of a source.
   *
   * @param source any source
   * @return its spectrum; harmonics up to 20 kHz, side frequencies without limit
   */
  static Spectrum of(Source source) {
    throw new UnsupportedOperationException("not built yet");
  }

  /**
   * The share of the power that passes: Σ P_k ∏ |H(f_k)|² / Σ P_k, for noise the integral over its
   * band.
   *
   * @param poleHertz the poles of the whole chain, any number (none: 1), each above 0
   * @return 0 to 1
   */
  double passedShare(double... poleHertz);

  /**
   * The power-weighted mean frequency of what passes, in hertz: the brightness.
   *
   * @param poleHertz as in {@link #passedShare}
   */
  double centroidHertz(double... poleHertz);

  /**
   * The lowest partial within 20 dB of the strongest one, in hertz; of noise the lower edge. Times
   * shorter than two periods of it describe the envelope only.
   */
  double lowestStrongHertz();
}
