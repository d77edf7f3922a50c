package thudbook.documents;

import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.quantities.Range;

/** What may stand at the keys of documents; the records of the core refuse the same. */
final class Limits {
  static final Range TIME = Range.of(Dimension.TIME, 1e-6, 60);
  static final Range TIME_OR_ZERO = TIME.orZeroToo();

  /** The time of a sample or of a strike in a list. */
  static final Range MOMENT = Range.of(Dimension.TIME, 0, 60);

  static final Range VOLTS = Range.of(Dimension.VOLTAGE, -20, 20);
  static final Range LEVEL = Range.of(Dimension.VOLTAGE, 1e-3, 20);
  static final Range RAIL = Range.of(Dimension.VOLTAGE, 0.1, 20);
  static final Range FREQUENCY =
      Range.of(Dimension.FREQUENCY, Frequency.LOWEST_HERTZ, Frequency.HIGHEST_HERTZ);
  static final Range CUTOFF = Range.of(Dimension.FREQUENCY, 0.01, 200_000);
  static final Range COUPLING = Range.of(Dimension.FREQUENCY, 0, 1000);
  static final Range RATIO = Range.of(Dimension.RATIO, 1e-6, 1e6);
  static final Range DUTY = Range.of(Dimension.SHARE, 0.01, 0.99);
  static final Range DECAYS_TO = Range.of(Dimension.SHARE, 1e-4, 0.9);

  /** Sustain, openness, a share of a sweep. */
  static final Range PROPORTION = Range.of(Dimension.NUMBER, 0, 1);

  static final Range CELL_SHARE = Range.of(Dimension.NUMBER, 1e-9, 1);
  static final Range OVERSHOOT = Range.of(Dimension.NUMBER, 1.001, 10);
  static final Range INDEX = Range.of(Dimension.NUMBER, 0, 50);
  static final Range GAIN = Range.of(Dimension.NUMBER, -2, 2);
  static final Range SPREAD = Range.of(Dimension.NUMBER, 1, 1000);
  static final Range EXPONENT = Range.of(Dimension.NUMBER, 0.5, 4);
  static final Range SATURATION = Range.of(Dimension.NUMBER, 0, 1e6);
  static final Range LEAK = Range.of(Dimension.LEVEL, -140, 0);
  static final Range MIX = Range.of(Dimension.LEVEL, -140, 40);
  static final Range TEMPO = Range.of(Dimension.TEMPO, 10, 999);
  static final Range WARM_UP = Range.of(Dimension.MINUTES, 0, 600);

  static final int TITLE = 200;
  static final int SENTENCE = 500;
  static final int NAME = 100;
  static final int TAG = 40;
  static final int NOTES_BYTES = 64 * 1024;

  static final int TAGS = 32;
  static final int STAGES = 4;
  static final int CHANNELS = 32;
  static final int KNOTS = 64;
  static final int CELLS = 4;
  static final int SAMPLES = 4096;
  static final int ROWS = 200;

  private Limits() {}
}
