package thudbook.gates;

import thudbook.quantities.Check;

/**
 * How the level of a gate follows its openness: a(y) = ℓ + (1 − ℓ)·(1 + k)·y^γ/(1 + k·y^γ) with ℓ =
 * 10^(leak/20).
 *
 * @param leakDb level of the closed gate, −140 dB to 0 dB
 * @param exponent γ, 0.5 to 4
 * @param saturation k, 0 to 1e6; 0: a plain power
 */
public record Level(double leakDb, double exponent, double saturation) {
  public Level {
    Check.inRange("leak in dB", leakDb, -140, 0);
    Check.inRange("level exponent", exponent, 0.5, 4);
    Check.inRange("saturation", saturation, 0, 1e6);
  }
}
