package thudbook.envelopes;

import thudbook.quantities.Check;

/**
 * A decay or release. Exponential: from L towards S as E = S + (L − S)·q^(t/D); D is the time in
 * which the distance to S falls to the fraction q, and it goes on towards S until the next segment.
 * Linear: straight to S in D, then S.
 *
 * @param seconds the nominal time D, 1 µs to 60 s
 * @param curve exponential or linear
 * @param decaysTo the fraction q, 0.0001 to 0.9, usually 0.01; 0.368 makes D the time constant,
 *     0.001 is −60 dB; linear falls ignore it
 */
public record Fall(double seconds, Curve curve, double decaysTo) {
  public Fall {
    Check.positiveTime("decay", seconds);
    Check.inRange("decaysTo", decaysTo, 1e-4, 0.9);
  }

  /** An exponential fall to 1 % in its time. */
  public static Fall exponential(double seconds) {
    return new Fall(seconds, Curve.EXPONENTIAL, 0.01);
  }

  /** The time constant of an exponential fall, D / ln(1/q), in seconds. */
  double timeConstantSeconds() {
    return seconds / -Math.log(decaysTo);
  }
}
