package thudbook.quantities;

/** Checks of numbers that compact constructors share; each prints the value that it refuses. */
public final class Check {
  private Check() {}

  /**
   * Refuses a value that is not a number from {@code least} to {@code most}.
   *
   * @throws IllegalArgumentException naming the value, if it is NaN or out of range
   */
  public static void inRange(String what, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          what + " must be from " + least + " to " + most + ", was " + value);
    }
  }

  /** Refuses a time that is neither 0 nor from 1 µs to 60 s. */
  public static void time(String what, double seconds) {
    if (seconds != 0) {
      positiveTime(what, seconds);
    }
  }

  /** Refuses a time that is not from 1 µs to 60 s. */
  public static void positiveTime(String what, double seconds) {
    inRange(what + " in seconds", seconds, 1e-6, 60);
  }
}
