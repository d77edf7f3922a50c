package thudbook.sources;

/** The waves in time, as their definitions say, to be transformed. */
final class Waves {
  private Waves() {}

  /** θ brought into (−π, π]. */
  static double wrap(double theta) {
    double wrapped = Math.IEEEremainder(theta, 2 * Math.PI);
    return wrapped <= -Math.PI ? wrapped + 2 * Math.PI : wrapped;
  }

  /** φ(θ) for index 1: what a modulator adds to its carrier's phase. */
  static double phase(Source.Wave wave, double anyTheta) {
    double theta = wrap(anyTheta);
    return switch (wave) {
      case SINE -> Math.sin(theta);
      case SQUARE -> Math.abs(theta) <= Math.PI / 2 ? theta : Math.signum(theta) * Math.PI - theta;
      case TRIANGLE -> theta - theta * Math.abs(theta) / Math.PI;
      case SAWTOOTH -> theta * theta / (2 * Math.PI) - Math.PI / 6;
      case PULSE -> throw new IllegalArgumentException("a pulse does not modulate");
    };
  }

  /** An oscillator's wave of peak 1; at a jump the mean of both sides. */
  static double oscillator(Source.Wave wave, double duty, double anyTheta) {
    double theta = wrap(anyTheta);
    return switch (wave) {
      case SINE -> Math.sin(theta);
      case TRIANGLE -> phase(Source.Wave.SQUARE, theta) * 2 / Math.PI;
      case SAWTOOTH -> Math.PI - Math.abs(theta) < 1e-9 ? 0 : theta / Math.PI;
      case SQUARE -> step(Math.PI / 2 - Math.abs(wrap(theta - Math.PI / 2)));
      case PULSE -> step(Math.PI * duty - Math.abs(wrap(theta - Math.PI / 2)));
    };
  }

  private static double step(double inside) {
    return Math.abs(inside) < 1e-9 ? 0 : Math.signum(inside);
  }
}
