package thudbook.envelopes;

import java.util.function.IntToDoubleFunction;

/**
 * A stretch of time on which a value is a constant, a line or a constant plus an exponential, and
 * therefore monotone:
 *
 * <p>v(s) = constant + slope·s + amplitude·e^(−s/timeConstant), s = t − start
 *
 * <p>At most one of slope and amplitude differs from 0.
 *
 * @param start seconds
 * @param end seconds; infinite for the last piece
 * @param constant the value, or what the exponential tends to
 * @param slope per second
 * @param amplitude of the exponential
 * @param timeConstant of the exponential in seconds; 1 where there is none
 * @param segment the segment of the envelope that it belongs to
 */
public record Piece(
    double start,
    double end,
    double constant,
    double slope,
    double amplitude,
    double timeConstant,
    Segment segment) {

  static Piece constant(double start, double end, double value, Segment segment) {
    return new Piece(start, end, value, 0, 0, 1, segment);
  }

  static Piece line(double start, double end, double from, double slope, Segment segment) {
    return new Piece(start, end, from, slope, 0, 1, segment);
  }

  static Piece exponential(
      double start, double end, double from, double towards, double timeConstant, Segment segment) {
    return new Piece(start, end, towards, 0, from - towards, timeConstant, segment);
  }

  /**
   * The number of the last of {@code count} pieces, in the order of time, that has begun at a time;
   * 0 before the first.
   *
   * @param start the start of the piece of a number, in seconds
   */
  public static int lastBegun(int count, IntToDoubleFunction start, double seconds) {
    int low = 0;
    int high = count - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (start.applyAsDouble(middle) <= seconds) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** Whether the value does not change. */
  public boolean isConstant() {
    return slope == 0 && amplitude == 0;
  }

  /** The value so many seconds after the start; at infinity its limit. */
  public double after(double seconds) {
    double value = constant;
    if (slope != 0) {
      value += slope * seconds;
    }
    if (amplitude != 0) {
      value += amplitude * Math.exp(-seconds / timeConstant);
    }
    return value;
  }

  /** The value at the start. */
  public double first() {
    return constant + amplitude;
  }

  /** The value at the end, or the limit that an endless piece tends to. */
  public double last() {
    return after(end - start);
  }

  /** 1 where the value rises, −1 where it falls, 0 where it stays. */
  public int direction() {
    return (int) Math.signum(slope != 0 ? slope : -amplitude);
  }

  /**
   * How long after the start the value is reached, by inverting the formula.
   *
   * @return seconds after the start, perhaps beyond the end; NaN if it is never reached
   */
  public double secondsUntil(double value) {
    if (slope != 0) {
      return (value - constant) / slope;
    }
    return -timeConstant * Math.log((value - constant) / amplitude);
  }

  /** This piece seen through offset + gain·v. */
  Piece through(double gain, double offset) {
    return new Piece(
        start,
        end,
        offset + gain * constant,
        gain * slope,
        gain * amplitude,
        timeConstant,
        segment);
  }

  /** The part from {@code from} to {@code to} seconds after the start. */
  public Piece part(double from, double to) {
    return new Piece(
        start + from,
        to + start < end ? start + to : end,
        constant + (slope == 0 ? 0 : slope * from),
        slope,
        amplitude == 0 ? 0 : amplitude * Math.exp(-from / timeConstant),
        timeConstant,
        segment);
  }
}
