package thudbook.gates;

import java.util.List;
import thudbook.quantities.Check;

/**
 * How far a control voltage tells the gate to open: piecewise linear through knots (v₀, 0) … (vₙ,
 * 1), constant outside, never falling. v₀ is the threshold, vₙ the ceiling.
 *
 * @param knots 2 to 64, voltages at least 1 mV apart and rising, openness from 0 to 1 never falling
 */
public record Transfer(List<Knot> knots) {
  public Transfer {
    knots = List.copyOf(knots);
    Check.inRange("number of knots", knots.size(), 2, 64);
    for (int i = 1; i < knots.size(); i++) {
      Knot low = knots.get(i - 1);
      Knot high = knots.get(i);
      if (high.volts() - low.volts() < 0.001 - 1e-12) {
        throw new IllegalArgumentException(
            "knots must rise by at least 1 mV, found " + high.volts() + " V after " + low.volts());
      }
      if (high.openness() < low.openness()) {
        throw new IllegalArgumentException(
            "openness must not fall, found " + high.openness() + " after " + low.openness());
      }
    }
    if (knots.get(0).openness() != 0 || knots.get(knots.size() - 1).openness() != 1) {
      throw new IllegalArgumentException("the first knot has openness 0 and the last one 1");
    }
  }

  /** A transfer that rises in one line from its threshold to its ceiling. */
  public static Transfer between(double thresholdVolts, double ceilingVolts) {
    return new Transfer(List.of(new Knot(thresholdVolts, 0), new Knot(ceilingVolts, 1)));
  }

  /** The control voltage up to which nothing is heard, in volts. */
  public double thresholdVolts() {
    return knots.get(0).volts();
  }

  /** The control voltage from which the gate can open no further, in volts. */
  public double ceilingVolts() {
    return knots.get(knots.size() - 1).volts();
  }

  /**
   * One corner of the transfer.
   *
   * @param volts −20 V to 20 V
   * @param openness 0 to 1
   */
  public record Knot(double volts, double openness) {
    public Knot {
      Check.inRange("knot in volts", volts, -20, 20);
      Check.inRange("openness of a knot", openness, 0, 1);
    }
  }
}
