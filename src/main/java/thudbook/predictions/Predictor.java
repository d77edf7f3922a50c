package thudbook.predictions;

/** Predicts sounds. Holds no state; safe for many threads. */
public final class Predictor {
  /** Rises whenever a number of any prediction may change; stored predictions are then remade. */
  public static final int MODEL_VERSION = 1;

  private Predictor() {}

  /** All metrics and the small shape, without the curve. */
  public static Prediction predict(Sound sound) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** All metrics, the small shape and the curve. */
  public static Prediction predictWithCurve(Sound sound) {
    throw new UnsupportedOperationException("not built yet");
  }
}
