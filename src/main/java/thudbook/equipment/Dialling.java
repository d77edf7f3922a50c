package thudbook.equipment;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Position;
import thudbook.quantities.Reading;

/**
 * A knob with the taper that counts: clock position ↔ angle ↔ share of the sweep ↔ value. Whatever
 * is not on the knob is refused with the reason, never clamped.
 */
public record Dialling(Control.Knob knob, Taper taper) {
  private static final int READ_DIGITS = 3;

  /**
   * The dialling of a knob.
   *
   * @param switchPosition where the switch that it depends on stands; null: not said, or none
   * @return empty if the knob has no taper for that position
   */
  public static Optional<Dialling> of(Control.Knob knob, @Nullable String switchPosition) {
    return knob.taper(switchPosition).map(taper -> new Dialling(knob, taper));
  }

  /**
   * The share of the sweep at which a position stands.
   *
   * @return refused with code {@code out-of-range}, {@code wrong-unit} or {@code not-on-a-knob}
   */
  public Reading share(Position at) {
    if (at instanceof Position.Share share) {
      return new Reading.Value(share.share());
    } else if (at instanceof Position.Clock clock) {
      Optional<Double> share = knob.sweep().share(clock);
      return share.isPresent() ? new Reading.Value(share.get()) : outside("a clock position");
    } else if (at instanceof Position.Angle angle) {
      double degrees = knob.sweep().degrees();
      return angle.degrees() <= degrees
          ? new Reading.Value(angle.degrees() / degrees)
          : new Reading.Refused(
              "out-of-range", "an angle from 0 to " + new Position.Angle(degrees).text());
    } else if (at instanceof Position.Value value) {
      return value.dimension() == knob.dimension()
          ? shareOf(value.si())
          : new Reading.Refused("wrong-unit", rangeInWords());
    }
    return new Reading.Refused(
        "not-on-a-knob", "a clock position, an angle, a share of the sweep or " + rangeInWords());
  }

  /**
   * The share of the sweep at which a value stands.
   *
   * @param si in the SI unit of the knob
   * @return refused with code {@code out-of-range} if the knob does not reach it
   */
  public Reading shareOf(double si) {
    return taper.reaches(si)
        ? new Reading.Value(taper.share(si))
        : new Reading.Refused("out-of-range", rangeInWords());
  }

  /** The value at a share of the sweep, in the SI unit of the knob. */
  public double value(double share) {
    return taper.value(share);
  }

  /** The angle of a share of the sweep, in degrees clockwise from its start. */
  public double degrees(double share) {
    return share * knob.sweep().degrees();
  }

  /** The clock position nearest to a share of the sweep, to the minute. */
  public Position.Clock clock(double share) {
    return knob.sweep().clock(share);
  }

  /** The clock position nearest to a share of the sweep to which the knob can be read. */
  public Position.Clock readable(double share) {
    return knob.sweep().clock(share, knob.stepMinutes());
  }

  /** A value as one reads it off the knob, to three digits: {@code 178 ms}. */
  public String words(double si) {
    return knob.dimension().say(read(si));
  }

  /** A value with the three digits that one reads off a knob. */
  public static double read(double si) {
    return new BigDecimal(si).round(new MathContext(READ_DIGITS)).doubleValue();
  }

  /** The range of its values in words: {@code 2 ms to 8 s}. */
  public String rangeInWords() {
    return knob.dimension().say(taper.from()) + " to " + knob.dimension().say(taper.to());
  }

  private Reading outside(String what) {
    return new Reading.Refused(
        "out-of-range",
        what + " clockwise from " + knob.sweep().from().text() + " to " + knob.sweep().to().text());
  }
}
