package thudbook.library;

/**
 * The bars of a small histogram: equally wide on a linear or a logarithmic axis that does not
 * depend on what is counted, so that bars never move. Smaller values are counted in the first bar,
 * larger ones in the last.
 *
 * @param from lower end of the first bar, in the unit of the quantity
 * @param to upper end of the last bar
 * @param logarithmic whether each bar is so many times the one before
 */
public record Bins(double from, double to, boolean logarithmic) {
  /** How many bars there are. */
  public static final int COUNT = 24;

  static final Bins TIME = logarithmic(0.000_1, 10);
  static final Bins FREQUENCY = logarithmic(20, 20_000);
  static final Bins SHARE = linear(0, 1);

  public Bins {
    if (!(from < to) || (logarithmic && !(from > 0))) {
      throw new IllegalArgumentException("bins rise, were " + from + " to " + to);
    }
  }

  static Bins linear(double from, double to) {
    return new Bins(from, to, false);
  }

  static Bins logarithmic(double from, double to) {
    return new Bins(from, to, true);
  }

  /** The bar of a value, 0 to 23. */
  public int of(double value) {
    double share =
        logarithmic
            ? value <= from ? 0 : Math.log(value / from) / Math.log(to / from)
            : (value - from) / (to - from);
    return (int) Math.max(0, Math.min(COUNT - 1, Math.floor(share * COUNT)));
  }

  /** The lower end of a bar; that of bar 24 is the end of the axis. */
  public double edge(int bar) {
    double share = (double) bar / COUNT;
    return logarithmic ? from * Math.pow(to / from, share) : from + (to - from) * share;
  }
}
