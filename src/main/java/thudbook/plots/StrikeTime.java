package thudbook.plots;

import thudbook.drawings.Axis;
import thudbook.drawings.Scale;
import thudbook.wording.ReadableNumbers;

/**
 * The time axis of a lone strike: even for the first millisecond, then every doubling has the same
 * width, as asinh(t / 1 ms). A dead time of 0.3 ms, an attack of 2 ms, a hold of 5 ms and a tail of
 * 2 s can all be read from it, and it has an origin, which a logarithmic axis lacks. On a linear
 * axis of 2 s the whole attack and hold of most strikes are narrower than a finger. (A square root
 * was tried as well: attack and hold get about a tenth of the width, too little for labels.)
 */
final class StrikeTime {
  /** Up to about this time, in seconds, the axis is even. */
  private static final double BEND_SECONDS = 0.001;

  /** Share of the width before the strike. */
  private static final double BEFORE = 0.012;

  private StrikeTime() {}

  /**
   * The axis.
   *
   * @param last the last time that is drawn, in seconds
   */
  static Axis axis(double last) {
    double end = Math.max(last, 2 * BEND_SECONDS);
    double from = -BEND_SECONDS * Math.sinh(BEFORE * arsinh(end / BEND_SECONDS));
    return Axis.bent(
        "time after the strike, ms",
        new Scale(from, end, BEND_SECONDS),
        0.0005,
        at ->
            at < 0.9995
                ? ReadableNumbers.significant(at * 1000)
                : ReadableNumbers.significant(at) + "\u00a0s");
  }

  private static double arsinh(double value) {
    return Math.log(value + Math.sqrt(value * value + 1));
  }
}
