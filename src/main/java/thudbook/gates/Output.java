package thudbook.gates;

import thudbook.quantities.Check;

/**
 * What a gate does to its output besides level and cutoff.
 *
 * @param bleedVolts offset at the output of the fully open gate, −20 V to 20 V, signed
 * @param railVolts the output clips at ± this, 0.1 V to 20 V
 */
public record Output(double bleedVolts, double railVolts) {
  public Output {
    Check.inRange("bleed in volts", bleedVolts, -20, 20);
    Check.inRange("outputRail in volts", railVolts, 0.1, 20);
  }
}
