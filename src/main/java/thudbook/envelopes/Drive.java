package thudbook.envelopes;

import thudbook.quantities.Check;

/**
 * What lies between an envelope and a gate: CV = clamp(offset + gain·peak·E, −rail, +rail).
 *
 * @param gain −2 to 2, an attenuverter that may double
 * @param offsetVolts −20 V to 20 V
 * @param railVolts 0.1 V to 20 V, usually 12 V
 */
public record Drive(double gain, double offsetVolts, double railVolts) {
  /** Gain 1, no offset, rails at 12 V. */
  public static final Drive UNITY = new Drive(1, 0, 12);

  public Drive {
    Check.inRange("gain", gain, -2, 2);
    Check.inRange("offset in volts", offsetVolts, -20, 20);
    Check.inRange("controlRail in volts", railVolts, 0.1, 20);
  }

  /** The control voltage that a voltage of the envelope makes. */
  public double apply(double envelopeVolts) {
    return Math.max(-railVolts, Math.min(railVolts, offsetVolts + gain * envelopeVolts));
  }
}
