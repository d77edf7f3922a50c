package thudbook.equipment;

import java.time.LocalTime;
import java.util.Optional;
import thudbook.quantities.Check;
import thudbook.quantities.Position.Clock;

/**
 * How far a knob turns, clockwise, as hands of a clock: an hour is 30°, a minute half a degree. The
 * same clock position at both ends is a full turn.
 *
 * @param from far left, whole minutes
 * @param to far right, whole minutes
 */
public record Sweep(Clock from, Clock to) {
  /** Far left at 7:00, far right at 5:00: the 300° of most rotary controls. */
  public static final Sweep USUAL =
      new Sweep(new Clock(LocalTime.of(7, 0)), new Clock(LocalTime.of(5, 0)));

  private static final int MINUTES_OF_A_TURN = 12 * 60;
  private static final double DEGREES_OF_A_MINUTE = 0.5;

  /** Steps that people name on a clock, coarse to fine, in minutes. */
  private static final int[] STEPS = {30, 15, 10, 5, 2, 1};

  /** The whole sweep in degrees, 0.5 to 360. */
  public double degrees() {
    return minutes() * DEGREES_OF_A_MINUTE;
  }

  /** The share of the sweep at a clock position; empty in the gap between both ends. */
  public Optional<Double> share(Clock at) {
    int turned = Math.floorMod(minute(at) - minute(from), MINUTES_OF_A_TURN);
    if (at.equals(to)) {
      return Optional.of(1.0);
    }
    return turned > minutes() ? Optional.empty() : Optional.of((double) turned / minutes());
  }

  /** The clock position nearest to a share of the sweep, to the minute. */
  public Clock clock(double share) {
    return clock(share, 1);
  }

  /**
   * The clock position nearest to a share of the sweep among those that can be read: every so many
   * minutes of the dial, and both ends.
   *
   * @param stepMinutes 1 to 30
   */
  public Clock clock(double share, int stepMinutes) {
    Check.inRange("share of the sweep", share, 0, 1);
    double turned = share * minutes();
    int start = minute(from);
    long rounded = Math.round((start + turned) / stepMinutes) * stepMinutes - start;
    double nearest = Math.min(minutes(), Math.max(0, rounded));
    if (turned <= Math.abs(turned - nearest)) {
      nearest = 0;
    } else if (minutes() - turned <= Math.abs(turned - nearest)) {
      nearest = minutes();
    }
    return clockOf(start + (int) nearest);
  }

  /**
   * The step between positions that can be told apart if a knob is read to within so many degrees:
   * the largest of 30, 15, 10, 5, 2 and 1 minutes of the dial of which two fit into that angle, so
   * that rounding to it costs at most a quarter of the reading error.
   *
   * @param toleranceDegrees positive
   */
  public static int stepMinutes(double toleranceDegrees) {
    for (int step : STEPS) {
      if (step * DEGREES_OF_A_MINUTE * 2 <= toleranceDegrees) {
        return step;
      }
    }
    return 1;
  }

  private int minutes() {
    int turned = Math.floorMod(minute(to) - minute(from), MINUTES_OF_A_TURN);
    return turned == 0 ? MINUTES_OF_A_TURN : turned;
  }

  private static int minute(Clock at) {
    return at.time().getHour() % 12 * 60 + at.time().getMinute();
  }

  private static Clock clockOf(int minute) {
    int onTheDial = Math.floorMod(minute, MINUTES_OF_A_TURN);
    int hour = onTheDial / 60;
    return new Clock(LocalTime.of(hour == 0 ? 12 : hour, onTheDial % 60));
  }
}
