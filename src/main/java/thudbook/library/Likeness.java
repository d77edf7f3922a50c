package thudbook.library;

/**
 * What makes recipes alike.
 *
 * <p>The distance of two shapes is √(s² + b²) in dB: s is the root mean square of the differences
 * of their 48 levels, which are relative to each peak, at times that are equally far apart on a
 * logarithmic axis from 0.5 ms to 4 s, in steps of 0.01 dB; b is 6 dB for every octave between
 * their mean frequencies at the peak.
 *
 * <p>The distance of two settings is the root of the sum of squares of: 12 dB if the kinds of
 * source differ; 3 dB if no gate channel is common; 6 dB for every octave between carriers and
 * between decays, for every doubling of 1 + index, and for every volt between envelope peaks. A
 * number that only one of the two has counts 6 dB.
 */
public enum Likeness {
  /** By the predicted shape and brightness. */
  SHAPE,
  /** By what is set. */
  SETTINGS,
  /** By √(shape² + settings²). */
  BOTH
}
