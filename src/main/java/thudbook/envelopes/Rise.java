package thudbook.envelopes;

import thudbook.quantities.Check;

/**
 * The attack of an envelope, from 0 to 1 in its time. Linear: t/A. Exponential: a capacitor that
 * charges towards an overshoot target X, E = X(1 − e^(−t/τ)) with τ = A / ln(X/(X − 1)), so that it
 * reaches 1 at A.
 *
 * @param seconds the attack A: 0 (a jump), or 1 µs to 60 s
 * @param curve linear or exponential
 * @param overshoot the target X, 1.001 to 10, usually 1.3; linear attacks ignore it
 */
public record Rise(double seconds, Curve curve, double overshoot) {
  public Rise {
    Check.time("attack", seconds);
    Check.inRange("overshoot", overshoot, 1.001, 10);
  }

  /** A linear attack. */
  public static Rise linear(double seconds) {
    return new Rise(seconds, Curve.LINEAR, 1.3);
  }

  /** The time constant of an exponential attack, A / ln(X/(X − 1)), in seconds. */
  double timeConstantSeconds() {
    return seconds / Math.log(overshoot / (overshoot - 1));
  }
}
