package thudbook.envelopes;

import org.jspecify.annotations.Nullable;

/** The control voltage of one stage over time, as exact pieces. Immutable. */
public final class ControlVoltage {
  private ControlVoltage() {}

  /**
   * The control voltage that an envelope makes behind a drive.
   *
   * @param strikes null: one strike at 0
   */
  public static ControlVoltage of(Envelope envelope, @Nullable Strikes strikes, Drive drive) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The control voltage at a time, in volts; at a jump the value after it. */
  public double at(double seconds) {
    throw new UnsupportedOperationException("not built yet");
  }
}
