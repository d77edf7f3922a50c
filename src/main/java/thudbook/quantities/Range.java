package thudbook.quantities;

import java.util.Optional;

/**
 * What may stand where a quantity is asked for.
 *
 * @param least in the SI unit of the dimension
 * @param most in the SI unit of the dimension
 * @param orZero whether 0 may stand there too
 */
public record Range(Dimension dimension, double least, double most, boolean orZero) {
  public Range {
    if (!(least <= most)) {
      throw new IllegalArgumentException("a range rises, was " + least + " to " + most);
    }
  }

  /** A range of a dimension, in its SI unit. */
  public static Range of(Dimension dimension, double least, double most) {
    return new Range(dimension, least, most, false);
  }

  /** The same range, and 0. */
  public Range orZeroToo() {
    return new Range(dimension, least, most, true);
  }

  /** Whether a value in SI units may stand there. */
  public boolean admits(double si) {
    return (si >= least && si <= most) || (orZero && si == 0);
  }

  /**
   * Reads what a person wrote. Shares and plain numbers may be written either way, 0.2 or 20 %; 0
   * of times, frequencies and voltages without a unit; everything else as its unit asks.
   */
  public Reading read(String text) {
    Optional<String> better = Written.withoutComma(text);
    if (better.isPresent()) {
      return new Reading.Refused("decimal-comma", better.get());
    }
    Optional<Written> read = Written.read(text);
    if (read.isEmpty()) {
      return new Reading.Refused("not-a-quantity", words());
    }
    Written written = read.get();
    if (written.unitText().isEmpty() && !unitMayBeMissing(written)) {
      String example = text.strip() + " " + dimension.unit();
      return new Reading.Refused(
          "unit-missing", dimension.words() + " with its unit, such as " + example);
    }
    if (!written.unitText().isEmpty() && !unitFits(written)) {
      return new Reading.Refused("wrong-unit", words());
    }
    double si = written.si();
    return admits(si) ? new Reading.Value(si) : new Reading.Refused("out-of-range", words());
  }

  private boolean unitFits(Written written) {
    if (written.unit() == null) {
      return false;
    }
    Dimension found = written.unit().dimension();
    return found == dimension || (found == Dimension.SHARE && dimension == Dimension.NUMBER);
  }

  private boolean unitMayBeMissing(Written written) {
    return switch (dimension) {
      case NUMBER, SHARE -> true;
      case TIME, FREQUENCY, VOLTAGE -> written.number().signum() == 0;
      case LEVEL, RATIO, TEMPO, MINUTES, ANGLE -> false;
    };
  }

  /** What may stand there, in words: {@code a time from 1 µs to 60 s}. */
  public String words() {
    return (orZero ? "0 or " : "")
        + dimension.words()
        + " from "
        + dimension.say(least)
        + " to "
        + dimension.say(most);
  }
}
