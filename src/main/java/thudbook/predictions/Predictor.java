package thudbook.predictions;

import java.util.OptionalDouble;
import thudbook.sources.Spectrum;

/** Predicts sounds. Holds no state; safe for many threads. */
public final class Predictor {
  /** Rises whenever a number of any prediction may change; stored predictions are then remade. */
  public static final int MODEL_VERSION = 4;

  private Predictor() {}

  /** All metrics and the small shape, without the curve. */
  public static Prediction predict(Sound sound) {
    return predict(sound, Spectrum.of(sound.source()));
  }

  /**
   * As {@link #predict(Sound)}, for many sounds with one source.
   *
   * @param spectrum of the sound's source
   */
  public static Prediction predict(Sound sound, Spectrum spectrum) {
    return new Analysis(sound, spectrum).predict(false);
  }

  /** All metrics, the small shape and the curve. */
  public static Prediction predictWithCurve(Sound sound) {
    return new Analysis(sound, Spectrum.of(sound.source())).predict(true);
  }

  /**
   * One metric of the lone strike's level, for maps over many sounds with one source.
   *
   * @param spectrum of the sound's source
   * @param metric one that follows from the level: peakDb, peakTime, onset, attack, hold, the
   *     releases, floorDb, brightnessPeak, brightnessAt20; others are empty
   */
  public static OptionalDouble levelMetric(Sound sound, Spectrum spectrum, Metric metric) {
    return new Analysis(sound, spectrum).levelMetric(metric);
  }
}
