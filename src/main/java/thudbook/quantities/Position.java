package thudbook.quantities;

import java.time.LocalTime;

/** Where a knob or a switch stands, as it was written. */
public sealed interface Position {
  /**
   * The hand of a clock, as a pointer knob is read: 7:00 is far left, 5:00 far right.
   *
   * @param time 1:00 to 12:59
   */
  record Clock(LocalTime time) implements Position {}

  /**
   * An angle in degrees, clockwise from the start of the sweep.
   *
   * @param degrees 0 to 3600
   */
  record Angle(double degrees) implements Position {
    public Angle {
      Check.inRange("angle in degrees", degrees, 0, 3600);
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
  }

  /**
   * A value with its unit, as printed on the panel.
   *
   * @param si the value in the SI unit of its dimension
   */
  record Value(double si, Dimension dimension) implements Position {}

  /** A switch position or mark by its name, such as {@code low}. */
  record Named(String name) implements Position {}
}
