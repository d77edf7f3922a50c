package thudbook.predictions;

/**
 * How far a sound departs from another one, as a part of what still sounds alike: 1.5 dB of peak,
 * 15 % of hold and of release40. Common practice, no source.
 */
public final class Departure {
  /** How far the peaks of sounds that are alike may be apart, in dB. */
  public static final double ALIKE_DECIBELS = 1.5;

  /** How far hold and release40 of sounds that are alike may be apart, as a share: 15 %. */
  public static final double ALIKE_SHARE = 0.15;

  private Departure() {}

  /**
   * The distance of two peaks over 1.5 dB.
   *
   * @return 0 or more; above 1 where they are not alike
   */
  public static double ofPeaks(double oneDb, double otherDb) {
    return Math.abs(otherDb - oneDb) / ALIKE_DECIBELS;
  }

  /**
   * The logarithm of the ratio of two times over that of 1.15, so that it does not matter which one
   * is named first.
   *
   * @param one in seconds
   * @param other in seconds
   * @return 0 or more; above 1 where they are not alike; 0 where either is 0
   */
  public static double ofTimes(double one, double other) {
    return one <= 0 || other <= 0 ? 0 : Math.abs(Math.log(other / one)) / Math.log(1 + ALIKE_SHARE);
  }
}
