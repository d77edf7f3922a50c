package thudbook.equipment;

import java.util.List;
import thudbook.quantities.Check;

/**
 * How the value of a knob follows from how far it is turned: a strictly monotone function v(s) of
 * the share s of its sweep, and its inverse s(v). Values are in the SI unit of the knob.
 */
public sealed interface Taper permits Taper.Linear, Taper.Exponential, MeasuredTaper {
  /** The value far left. */
  double from();

  /** The value far right. */
  double to();

  /**
   * The value at a share of the sweep.
   *
   * @param share 0 to 1
   * @throws IllegalArgumentException if the share is NaN or out of range
   */
  double value(double share);

  /**
   * The share of the sweep at which a value stands: the inverse of {@link #value}.
   *
   * @param value between the values of both ends
   * @throws IllegalArgumentException if the value is NaN or out of range
   */
  double share(double value);

  /** Whether the knob reaches a value. */
  default boolean reaches(double value) {
    return value >= Math.min(from(), to()) && value <= Math.max(from(), to());
  }

  /**
   * v = from + s·(to − from), s = (v − from)/(to − from).
   *
   * @param from finite; a knob may also fall from left to right
   * @param to finite, not {@code from}
   */
  record Linear(double from, double to) implements Taper {
    public Linear {
      checkEnds(from, to);
    }

    @Override
    public double value(double share) {
      Check.inRange("share of the sweep", share, 0, 1);
      // So written it meets both ends exactly.
      return (1 - share) * from + share * to;
    }

    @Override
    public double share(double value) {
      checkReached(this, value);
      return (value - from) / (to - from);
    }
  }

  /**
   * v = from·(to/from)^s, s = ln(v/from)/ln(to/from): equal turns are equal ratios. Usual for times
   * and frequencies, in knobs that set a control voltage of an exponential converter (common
   * practice, no source).
   *
   * @param from finite, not 0
   * @param to finite, of the same sign, not {@code from}
   */
  record Exponential(double from, double to) implements Taper {
    public Exponential {
      checkEnds(from, to);
      if (!(from * Math.signum(to) > 0)) {
        throw new IllegalArgumentException(
            "an exponential taper stays on one side of 0, was from " + from + " to " + to);
      }
    }

    @Override
    public double value(double share) {
      Check.inRange("share of the sweep", share, 0, 1);
      return share == 1 ? to : from * Math.exp(share * Math.log(to / from));
    }

    @Override
    public double share(double value) {
      checkReached(this, value);
      return Math.min(1, Math.max(0, Math.log(value / from) / Math.log(to / from)));
    }
  }

  /**
   * A taper through measured points, monotone between them.
   *
   * @param points 2 to 64, from share 0 to share 1, strictly rising or strictly falling values
   */
  static Taper measured(List<MeasuredTaper.Point> points) {
    return new MeasuredTaper(points);
  }

  private static void checkEnds(double from, double to) {
    Check.inRange("value far left", from, -Double.MAX_VALUE, Double.MAX_VALUE);
    Check.inRange("value far right", to, -Double.MAX_VALUE, Double.MAX_VALUE);
    if (from == to) {
      throw new IllegalArgumentException("both ends of a knob have the value " + from);
    }
  }

  /** Refuses a value that a taper does not reach. */
  static void checkReached(Taper taper, double value) {
    Check.inRange(
        "value of the knob",
        value,
        Math.min(taper.from(), taper.to()),
        Math.max(taper.from(), taper.to()));
  }
}
