package thudbook.predictions;

import java.util.Arrays;
import java.util.List;
import thudbook.gates.Motion;
import thudbook.gates.MotionPiece;

/**
 * The stretches of time between the corners of all stages of a chain, and the piece of each stage's
 * motion that goes on there. The last one ends at the horizon.
 */
final class Intervals {
  /** After so many of the longest time constants nothing is left of them (e^−45 = 3e-20). */
  private static final double LIFETIMES = 45;

  private final double[] corners;
  private final MotionPiece[][] pieces;
  private final double horizon;

  Intervals(List<Motion> motions) {
    corners = cornersOf(motions);
    pieces = new MotionPiece[corners.length][motions.size()];
    for (int j = 0; j < motions.size(); j++) {
      List<MotionPiece> own = motions.get(j).pieces();
      int place = 0;
      for (int k = 0; k < corners.length; k++) {
        while (place + 1 < own.size() && own.get(place + 1).start() <= corners[k]) {
          place++;
        }
        pieces[k][j] = own.get(place);
      }
    }
    int last = corners.length - 1;
    double longest = 0;
    for (MotionPiece piece : pieces[last]) {
      longest = Math.max(longest, piece.longestTimeConstant());
    }
    horizon = corners[last] + LIFETIMES * longest;
  }

  private static double[] cornersOf(List<Motion> motions) {
    return motions.stream()
        .flatMap(motion -> motion.pieces().stream())
        .mapToDouble(MotionPiece::start)
        .sorted()
        .distinct()
        .toArray();
  }

  /** How many there are. */
  int count() {
    return corners.length;
  }

  /** The corners of all stages, from 0. */
  double[] corners() {
    return corners.clone();
  }

  /** The corner at which an interval starts. */
  double start(int interval) {
    return corners[interval];
  }

  /** The corner at which an interval ends, or the horizon. */
  double end(int interval) {
    return interval + 1 == corners.length ? horizon : corners[interval + 1];
  }

  /** The time after which nothing happens any more, in seconds. */
  double horizonSeconds() {
    return horizon;
  }

  /** The interval in which a time of at least 0 s lies; a corner belongs to the one after it. */
  int at(double seconds) {
    int place = Arrays.binarySearch(corners, seconds);
    return place >= 0 ? place : -place - 2;
  }

  /** Puts the opennesses of all stages at a time of an interval into an array. */
  void openness(int interval, double seconds, double[] openness) {
    MotionPiece[] here = pieces[interval];
    for (int j = 0; j < here.length; j++) {
      openness[j] = here[j].openness(seconds - here[j].start());
    }
  }

  /** Whether cells go both ways in an interval. */
  boolean isMixed(int interval) {
    boolean rises = false;
    boolean falls = false;
    for (MotionPiece piece : pieces[interval]) {
      rises |= piece.rises();
      falls |= piece.falls();
    }
    return rises && falls;
  }

  /** Times of an interval, close enough that no turn between two of them is missed. */
  double[] places(int interval) {
    return Scan.interval(start(interval), end(interval), shortestTimeConstant(interval));
  }

  /** The shortest time constant at work in an interval, in seconds. */
  double shortestTimeConstant(int interval) {
    double shortest = Double.POSITIVE_INFINITY;
    for (MotionPiece piece : pieces[interval]) {
      shortest = Math.min(shortest, piece.shortestTimeConstant());
    }
    return shortest;
  }
}
