package thudbook.predictions;

import java.util.ArrayList;
import java.util.List;

/**
 * Follows the level with straight lines, each made as long as a tolerance lets it be, which needs
 * about the fewest lines that there can be: a fine tolerance first, then the promised one. If those
 * are still too many, it is widened: errors of lines fall with the square of their number.
 */
final class CurveLines {
  /** What straight lines may be off, in dB; a little under the promised 0.1 dB. */
  private static final double TOLERANCE_DB = 0.09;

  /** What lines of a lone strike are off where there are points enough: no kink is then seen. */
  private static final double FINE_DB = 0.02;

  /** The share of the points that fine lines may take; the control voltage wants some as well. */
  private static final double FINE_SHARE = 0.75;

  /** A line is long enough when its error is at least this share of its tolerance. */
  private static final double LONG_ENOUGH = 0.6;

  /** So often a line is made longer or shorter before the longest good one is taken. */
  private static final int MOST_TRIES = 6;

  /** So often the tolerance is widened; errors fall so fast that a few times are enough. */
  private static final int MOST_WIDENINGS = 8;

  private static final double SILENCE_DB = -1000;

  /** A line this many times as far off as it may be is not looked at any further. */
  private static final double HOPELESS = 4;

  /**
   * Where inside a line its error is looked at: closer at the ends, where exponentials are fast;
   * first where it is mostly worst.
   */
  static final double[] LOOKS = {
    1 / 2.0,
    1 / 8.0,
    7 / 8.0,
    1 / 64.0,
    63 / 64.0,
    1 / 4.0,
    3 / 4.0,
    1 / 1024.0,
    1 / 256.0,
    1 / 16.0,
    15 / 16.0,
    3 / 8.0,
    5 / 8.0
  };

  private final Trace trace;
  private final double floorDb;

  /**
   * Lines along a level.
   *
   * @param floorDb below this it does not matter how far they are off
   */
  CurveLines(Trace trace, double floorDb) {
    this.trace = trace;
    this.floorDb = floorDb;
  }

  /**
   * A line between two neighbouring points.
   *
   * @param toDb the level at its end
   * @param worstDb how far the level is off where it is worst
   */
  record Line(double from, double to, double toDb, double worstDb) {}

  /**
   * Lines that follow the level between fixed times, at most so many unless the fixed times alone
   * are more.
   *
   * @param large whether they are drawn large: then finer, where there are points enough
   */
  List<Line> along(List<Double> fixed, int budget, boolean large) {
    if (large) {
      // A lone strike is drawn large; the lines of a train are too close for kinks to be seen.
      int few = (int) (FINE_SHARE * budget);
      List<Line> fine = along(fixed, FINE_DB, few);
      if (fine.size() <= few) {
        return fine;
      }
    }
    double tolerance = TOLERANCE_DB;
    List<Line> lines = along(fixed, tolerance, 2 * budget);
    for (int i = 0; i < MOST_WIDENINGS && lines.size() > budget; i++) {
      double share = (double) lines.size() / budget;
      tolerance *= Math.max(1.2, share * share);
      lines = along(fixed, tolerance, 2 * budget);
    }
    return lines;
  }

  /** Gives up as soon as there are more lines than given. */
  private List<Line> along(List<Double> fixed, double tolerance, int given) {
    List<Line> lines = new ArrayList<>();
    for (int k = 0; k + 1 < fixed.size() && lines.size() <= given; k++) {
      double to = fixed.get(k + 1);
      double from = fixed.get(k);
      double fromDb = levelDb(from);
      double length = to - from;
      while (from < to && lines.size() <= given) {
        Line line = longest(from, fromDb, length, to, tolerance);
        lines.add(line);
        length = (line.to() - from) * longer(line.worstDb(), tolerance);
        from = line.to();
        fromDb = line.toDb();
      }
    }
    return lines;
  }

  /**
   * About the longest line from a time whose error is within the tolerance.
   *
   * @param guess of its length
   * @param end where it ends at the latest
   */
  private Line longest(double from, double fromDb, double guess, double end, double tolerance) {
    double least = 1e-12 * Math.max(1, Math.abs(end));
    Line best = null;
    double tooLong = Double.POSITIVE_INFINITY;
    double length = guess;
    for (int i = 0; ; i++) {
      // What would be left for another line must be worth one.
      double to = from + length * 1.001 >= end ? end : from + length;
      boolean shortest = to - from <= least;
      Line line =
          line(from, fromDb, to, shortest ? Double.POSITIVE_INFINITY : HOPELESS * tolerance);
      boolean good = line.worstDb() <= tolerance || shortest;
      if (good) {
        best = best == null || best.to() < to ? line : best;
        if (to == end || line.worstDb() >= LONG_ENOUGH * tolerance || i >= MOST_TRIES) {
          return best;
        }
      } else {
        tooLong = Math.min(tooLong, to - from);
        if (best != null && i >= MOST_TRIES) {
          return best;
        }
      }
      double factor =
          good
              ? longer(line.worstDb(), tolerance)
              : Math.max(0.05, Math.sqrt(0.8 * tolerance / line.worstDb()));
      double next = (to - from) * factor;
      double known = best == null ? 0 : best.to() - from;
      // Outside of what is known to be good and bad there is nothing to find: halve what is
      // between.
      length =
          next <= known || next >= tooLong ? (known + Math.min(tooLong, end - from)) / 2 : next;
    }
  }

  private static double longer(double worstDb, double tolerance) {
    return worstDb <= 0 ? 4 : Math.min(4, Math.sqrt(0.9 * tolerance / worstDb));
  }

  /** Silence is no number of decibels; a line from or to it is a very steep one. */
  private double levelDb(double seconds) {
    return Math.max(SILENCE_DB, LevelMetrics.decibels(trace.level(seconds)));
  }

  /** The line between two times. */
  Line line(double from, double to) {
    return line(from, levelDb(from), to, Double.POSITIVE_INFINITY);
  }

  /**
   * A line.
   *
   * @param hopeless an error above which it does not matter how large it is
   */
  private Line line(double from, double fromDb, double to, double hopeless) {
    double toDb = levelDb(to);
    double worstDb = 0;
    for (double share : LOOKS) {
      if (worstDb > hopeless) {
        break;
      }
      double exactDb = LevelMetrics.decibels(trace.level(from + (to - from) * share));
      if (exactDb > floorDb) {
        worstDb = Math.max(worstDb, Math.abs(exactDb - (fromDb + (toDb - fromDb) * share)));
      }
    }
    return new Line(from, to, toDb, worstDb);
  }
}
