package thudbook.quantities;

/** The kinds of quantity, each with the one unit in which documents write it. */
public enum Dimension {
  TIME("ms", 3, "s", "a time"),
  FREQUENCY("Hz", 0, "Hz", "a frequency"),
  VOLTAGE("V", 0, "V", "a voltage"),
  LEVEL("dB", 0, "dB", "a level"),
  SHARE("%", 2, "", "a share"),
  RATIO("x", 0, "x", "a ratio"),
  TEMPO("bpm", 0, "bpm", "a tempo"),
  /** A time in minutes, for warming up; kept in minutes. */
  MINUTES("min", 0, "min", "a time"),
  /** An angle of a knob, kept in degrees. */
  ANGLE("deg", 0, "deg", "an angle"),
  /** A plain number. */
  NUMBER("", 0, "", "a number");

  private final String unit;
  private final int places;
  private final String siUnit;
  private final String words;

  Dimension(String unit, int places, String siUnit, String words) {
    this.unit = unit;
    this.places = places;
    this.siUnit = siUnit;
    this.words = words;
  }

  /** The unit of documents. */
  public String unit() {
    return unit;
  }

  /** How many places the decimal point moves to the right from the SI value to the unit. */
  public int places() {
    return places;
  }

  /** The unit of numbers in memory and in JSON; empty for shares and plain numbers. */
  public String siUnit() {
    return siUnit;
  }

  /** What it is called in messages, with its article. */
  String words() {
    return words;
  }

  /**
   * A value as documents write it: in the one unit of its dimension, with the fewest digits that
   * read back as exactly this double; −0 as 0.
   *
   * @param si finite, in the SI unit
   */
  public String write(double si) {
    return Decimals.text(si, places) + tail(unit);
  }

  /** A value as one says it: 1 µs, 60 s, 20 kHz, 1 mV. */
  public String say(double si) {
    double size = Math.abs(si);
    return switch (this) {
      case TIME -> {
        if (size == 0 || size >= 1) {
          yield Decimals.text(si, 0) + " s";
        }
        yield size < 1e-3 ? Decimals.text(si, 6) + " µs" : Decimals.text(si, 3) + " ms";
      }
      case FREQUENCY -> size >= 1000 ? Decimals.text(si, -3) + " kHz" : write(si);
      case VOLTAGE -> size != 0 && size < 0.1 ? Decimals.text(si, 3) + " mV" : write(si);
      case LEVEL, SHARE, RATIO, TEMPO, MINUTES, ANGLE, NUMBER -> write(si);
    };
  }

  private static String tail(String unit) {
    return unit.isEmpty() ? "" : " " + unit;
  }
}
