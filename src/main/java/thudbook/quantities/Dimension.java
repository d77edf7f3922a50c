package thudbook.quantities;

/** The kinds of quantity, each with the one unit in which documents write it. */
public enum Dimension {
  TIME("ms", 3),
  FREQUENCY("Hz", 0),
  VOLTAGE("V", 0),
  LEVEL("dB", 0),
  SHARE("%", 2),
  RATIO("x", 0),
  TEMPO("bpm", 0),
  MINUTES("min", 0),
  /** A plain number. */
  NUMBER("", 0);

  private final String unit;
  private final int places;

  Dimension(String unit, int places) {
    this.unit = unit;
    this.places = places;
  }

  /** The unit of documents. */
  public String unit() {
    return unit;
  }

  /** How many places the decimal point moves to the right from the SI value to the unit. */
  public int places() {
    return places;
  }
}
