package thudbook.quantities;

import java.time.LocalTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a knob or a switch stands, as it was written. */
public sealed interface Position {
  /** What may stand where a position is asked for, in words that fit behind "expected". */
  String EXPECTED =
      "a position such as 10:30 (1:00 to 12:59), 75 deg (0 to 3600), 25 % (0 to 100),"
          + " 180 ms, or a name";

  /** The position as documents write it; reading it gives an equal position. */
  String text();

  /**
   * Reads a position. A text that is no clock, angle, share or value is a name, such as {@code low}
   * or {@code 16'}.
   *
   * @return empty if the text looks like one of them and is out of range or has a decimal comma, or
   *     if it is blank
   */
  static Optional<Position> read(String text) {
    Optional<Position> measured = Measured.read(text);
    if (measured.isPresent()) {
      return measured;
    }
    return Measured.looksLikeOne(text) || text.isBlank()
        ? Optional.empty()
        : Optional.of(new Named(text.strip()));
  }

  /**
   * The hand of a clock, as a pointer knob is read: 7:00 is far left, 5:00 far right.
   *
   * @param time 1:00 to 12:59, whole minutes
   */
  record Clock(LocalTime time) implements Position {
    public Clock {
      Check.inRange("hour on the clock", time.getHour(), 1, 12);
      time = time.withSecond(0).withNano(0);
    }

    @Override
    public String text() {
      return time.getHour() + ":" + (time.getMinute() < 10 ? "0" : "") + time.getMinute();
    }
  }

  /**
   * An angle in degrees, clockwise from the start of the sweep.
   *
   * @param degrees 0 to 3600
   */
  record Angle(double degrees) implements Position {
    public Angle {
      Check.inRange("angle in degrees", degrees, 0, 3600);
    }

    @Override
    public String text() {
      return Decimals.text(degrees, 0) + " deg";
    }
  }

  /**
   * A share of the sweep.
   *
   * @param share 0 to 1
   */
  record Share(double share) implements Position {
    public Share {
      Check.inRange("share", share, 0, 1);
    }

    @Override
    public String text() {
      return Dimension.SHARE.write(share);
    }
  }

  /**
   * A value with its unit, as printed on the panel.
   *
   * @param si the value in the SI unit of its dimension, finite
   * @param dimension any but a share, which is a {@link Share}
   */
  record Value(double si, Dimension dimension) implements Position {
    public Value {
      Check.inRange("value", si, -Double.MAX_VALUE, Double.MAX_VALUE);
      if (dimension == Dimension.SHARE) {
        throw new IllegalArgumentException("a share of the sweep is no value");
      }
    }

    @Override
    public String text() {
      return dimension.write(si);
    }
  }

  /**
   * A switch position or mark by its name, such as {@code low}.
   *
   * @param name not blank, and nothing that reads as another kind of position
   */
  record Named(String name) implements Position {
    public Named {
      if (name.isBlank() || Measured.looksLikeOne(name)) {
        throw new IllegalArgumentException("the name of a position was expected, found " + name);
      }
    }

    @Override
    public String text() {
      return name;
    }
  }

  /** Reads the positions that are not names. */
  final class Measured {
    private static final Pattern CLOCK = Pattern.compile("([0-9]{1,2}):([0-9]{2})");
    private static final Pattern DEGREES = Pattern.compile("(.*[0-9.]) *(?:°|deg|degrees)");

    private Measured() {}

    static boolean looksLikeOne(String text) {
      String stripped = text.strip();
      return CLOCK.matcher(stripped).matches()
          || degrees(stripped).isPresent()
          || Written.withoutComma(stripped).isPresent()
          || Written.read(stripped).filter(w -> w.unit() != null).isPresent();
    }

    static Optional<Position> read(String text) {
      String stripped = text.strip();
      Matcher clock = CLOCK.matcher(stripped);
      if (clock.matches()) {
        int hour = Integer.parseInt(clock.group(1));
        int minute = Integer.parseInt(clock.group(2));
        return hour >= 1 && hour <= 12 && minute <= 59
            ? Optional.of(new Clock(LocalTime.of(hour, minute)))
            : Optional.empty();
      }
      Optional<Written> degrees = degrees(stripped);
      if (degrees.isPresent()) {
        double angle = degrees.get().si();
        return angle >= 0 && angle <= 3600 ? Optional.of(new Angle(angle)) : Optional.empty();
      }
      return Written.read(stripped).flatMap(Measured::valued);
    }

    private static Optional<Position> valued(Written written) {
      Written.Unit unit = written.unit();
      double si = written.si();
      if (unit == null || !Double.isFinite(si)) {
        return Optional.empty();
      }
      if (unit.dimension() != Dimension.SHARE) {
        return Optional.of(new Value(si, unit.dimension()));
      }
      return si >= 0 && si <= 1 ? Optional.of(new Share(si)) : Optional.empty();
    }

    private static Optional<Written> degrees(String text) {
      Matcher matcher = DEGREES.matcher(text);
      return matcher.matches()
          ? Written.read(matcher.group(1)).filter(w -> w.unitText().isEmpty())
          : Optional.empty();
    }
  }
}
