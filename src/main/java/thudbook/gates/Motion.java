package thudbook.gates;

import thudbook.envelopes.ControlVoltage;

/** How a channel's cells follow a control voltage, as exact pieces. Immutable. */
public final class Motion {
  private Motion() {}

  /** The motion from rest, settled to the control voltage before the first strike. */
  public static Motion of(ControlVoltage controlVoltage, Channel channel) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The openness at a time, 0 to 1. */
  public double openness(double seconds) {
    throw new UnsupportedOperationException("not built yet");
  }

  /** The state of one cell at a time, 0 to 1. */
  public double cell(int index, double seconds) {
    throw new UnsupportedOperationException("not built yet");
  }
}
