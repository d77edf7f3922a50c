package thudbook.sources;

import thudbook.quantities.Check;
import thudbook.quantities.Frequency;

/** The frequency of a modulator: its own, or a ratio of its carrier's. */
public sealed interface Modulator {
  /** The least ratio of a modulator to its carrier. */
  double LEAST_RATIO = 1e-6;

  /** The greatest ratio of a modulator to its carrier. */
  double MOST_RATIO = 1e6;

  /** The modulator's frequency in hertz beside a carrier of so many hertz. */
  double hertz(double carrierHertz);

  /** A frequency of its own, which does not follow the carrier. */
  record Absolute(Frequency frequency) implements Modulator {
    @Override
    public double hertz(double carrierHertz) {
      return frequency.hertz();
    }
  }

  /**
   * A multiple of the carrier's frequency.
   *
   * @param ratio modulator over carrier, 1e-6 to 1e6; the product stays in the range of frequencies
   */
  record Ratio(double ratio) implements Modulator {
    public Ratio {
      Check.inRange("ratio", ratio, LEAST_RATIO, MOST_RATIO);
    }

    @Override
    public double hertz(double carrierHertz) {
      return ratio * carrierHertz;
    }
  }
}
