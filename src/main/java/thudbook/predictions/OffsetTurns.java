package thudbook.predictions;

import java.util.stream.DoubleStream;

/**
 * Where the offsets behind the stages of a chain turn round, and how large the last one gets.
 *
 * <p>d = d₁·a₂ + d₂ rises with every openness where all bleeds have one sign, and then turns only
 * at a corner, unless cells go both ways. Bleeds of opposed signs cancel as long as both gates are
 * open, and not while one of them is slower: d may turn at any time between two corners. There it
 * is looked at on a grid even in the logarithm of time, and each turn is refined.
 */
final class OffsetTurns {
  /** Turns by less than this are rounding, or too small to matter. */
  private static final double SMALL_VOLTS = 1e-9;

  private final Trace trace;
  private final int stages;
  private final DoubleStream.Builder turns = DoubleStream.builder();
  private double largest;

  OffsetTurns(Trace trace) {
    this.trace = trace;
    stages = trace.motions().size();
    boolean[] opposed = opposed(trace.chain());
    Intervals intervals = trace.intervals();
    for (int k = 0; k < intervals.count(); k++) {
      boolean mixed = intervals.isMixed(k);
      if (mixed || opposed[stages]) {
        double[] places = intervals.places(k);
        for (int count = 1; count <= stages; count++) {
          if (opposed[count] || (mixed && count == stages)) {
            look(k, places, count);
          }
        }
      } else {
        see(k, intervals.start(k));
        see(k, intervals.end(k));
      }
    }
  }

  /** Whether the bleeds of the first so many stages have both signs. */
  private static boolean[] opposed(Chain chain) {
    boolean[] opposed = new boolean[chain.stages() + 1];
    boolean positive = false;
    boolean negative = false;
    for (int count = 1; count < opposed.length; count++) {
      double bleed = chain.law(count - 1).offsetVolts(1);
      positive |= bleed > 0;
      negative |= bleed < 0;
      opposed[count] = positive && negative;
    }
    return opposed;
  }

  private void look(int corner, double[] places, int count) {
    double[] offsets = new double[places.length];
    for (int i = 0; i < places.length; i++) {
      offsets[i] = trace.offsetIn(corner, places[i], count);
      if (count == stages) {
        largest = Math.max(largest, Math.abs(offsets[i]));
      }
    }
    for (int i = 1; i + 1 < places.length; i++) {
      double before = offsets[i] - offsets[i - 1];
      double after = offsets[i + 1] - offsets[i];
      if (before * after < 0 && Math.max(Math.abs(before), Math.abs(after)) > SMALL_VOLTS) {
        double sign = Math.signum(before);
        double turn =
            Roots.maximum(
                places[i - 1], places[i + 1], t -> sign * trace.offsetIn(corner, t, count));
        turns.add(turn);
        if (count == stages) {
          see(corner, turn);
        }
      }
    }
  }

  private void see(int corner, double seconds) {
    largest = Math.max(largest, Math.abs(trace.offsetIn(corner, seconds)));
  }

  /** The largest |d| behind all stages from the strike on, in volts. */
  double largestVolts() {
    return largest;
  }

  /** The given times and those at which an offset turns, rising, without doubles. */
  double[] among(double[] times) {
    return DoubleStream.concat(DoubleStream.of(times), turns.build()).sorted().distinct().toArray();
  }
}
