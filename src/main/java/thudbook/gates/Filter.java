package thudbook.gates;

import thudbook.quantities.Check;

/**
 * The filter of a gate, whose cutoff follows its openness: f_c(y) = f_closed + (f_open −
 * f_closed)·y^κ.
 *
 * @param poles 1 or 2
 * @param spread ratio s of the two poles, f_c and s·f_c, 1 to 1000
 * @param closedHertz cutoff of the closed gate, 0.01 Hz to 200 kHz
 * @param openHertz cutoff of the open gate, at least the closed one, to 200 kHz
 * @param exponent κ, 0.5 to 4
 */
public record Filter(
    int poles, double spread, double closedHertz, double openHertz, double exponent) {
  public Filter {
    Check.inRange("poles", poles, 1, 2);
    Check.inRange("spread", spread, 1, 1000);
    Check.inRange("closed cutoff in hertz", closedHertz, 0.01, 200_000);
    Check.inRange("open cutoff in hertz", openHertz, 0.01, 200_000);
    if (closedHertz > openHertz) {
      throw new IllegalArgumentException(
          "the closed cutoff must not be above the open one, was "
              + closedHertz
              + " and "
              + openHertz);
    }
    Check.inRange("cutoff exponent", exponent, 0.5, 4);
  }
}
