package thudbook.documents;

import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.quantities.Range;

/** What may stand at the keys of documents; the records of the core refuse the same. */
public final class Limits {
  public static final Range TIME = Range.of(Dimension.TIME, 1e-6, 60);
  public static final Range TIME_OR_ZERO = TIME.orZeroToo();

  /** The time of a sample or of a strike in a list. */
  public static final Range MOMENT = Range.of(Dimension.TIME, 0, 60);

  public static final Range VOLTS = Range.of(Dimension.VOLTAGE, -20, 20);
  public static final Range LEVEL = Range.of(Dimension.VOLTAGE, 1e-3, 20);
  public static final Range RAIL = Range.of(Dimension.VOLTAGE, 0.1, 20);
  public static final Range FREQUENCY =
      Range.of(Dimension.FREQUENCY, Frequency.LOWEST_HERTZ, Frequency.HIGHEST_HERTZ);
  public static final Range CUTOFF = Range.of(Dimension.FREQUENCY, 0.01, 200_000);
  public static final Range COUPLING = Range.of(Dimension.FREQUENCY, 0, 1000);
  public static final Range RATIO = Range.of(Dimension.RATIO, 1e-6, 1e6);
  public static final Range DUTY = Range.of(Dimension.SHARE, 0.01, 0.99);
  public static final Range DECAYS_TO = Range.of(Dimension.SHARE, 1e-4, 0.9);

  /** Sustain, openness, a share of a sweep. */
  public static final Range PROPORTION = Range.of(Dimension.NUMBER, 0, 1);

  /** A place on a knob. */
  public static final Range SWEEP = Range.of(Dimension.SHARE, 0, 1);

  public static final Range CELL_SHARE = Range.of(Dimension.NUMBER, 1e-9, 1);
  public static final Range OVERSHOOT = Range.of(Dimension.NUMBER, 1.001, 10);
  public static final Range INDEX = Range.of(Dimension.NUMBER, 0, 50);
  public static final Range GAIN = Range.of(Dimension.NUMBER, -2, 2);
  public static final Range SPREAD = Range.of(Dimension.NUMBER, 1, 1000);
  public static final Range EXPONENT = Range.of(Dimension.NUMBER, 0.5, 4);
  public static final Range SATURATION = Range.of(Dimension.NUMBER, 0, 1e6);
  public static final Range LEAK = Range.of(Dimension.LEVEL, -140, 0);
  public static final Range MIX = Range.of(Dimension.LEVEL, -140, 40);
  public static final Range TEMPO = Range.of(Dimension.TEMPO, 10, 999);
  public static final Range WARM_UP = Range.of(Dimension.MINUTES, 0, 600);
  public static final Range READ_BACK = Range.of(Dimension.ANGLE, 0.1, 90);

  public static final int TITLE = 200;
  public static final int SENTENCE = 500;
  public static final int NAME = 100;

  /** What recipes call a module. */
  public static final int LABEL = 40;

  public static final int TAG = 40;
  public static final int NOTES_BYTES = 64 * 1024;

  public static final int TAGS = 32;
  public static final int STAGES = 4;
  public static final int CHANNELS = 32;
  public static final int CONTROLS = 100;
  public static final int POSITIONS = 64;
  public static final int PORTS = 200;
  public static final int KNOTS = 64;
  public static final int CELLS = 4;
  public static final int SAMPLES = 4096;
  public static final int ROWS = 200;

  private Limits() {}
}
