package thudbook.gates;

import thudbook.envelopes.Piece;

/**
 * How the cells of a channel move on a stretch of time on which each of them only opens or only
 * falls. With u(s) = A + B·s + C·e^(−s/τ), a cell with time constant T goes from y₀ as
 *
 * <p>y(s) = y₀·e^(−s/T) + A·(1 − e^(−s/T)) + B·(s − T·(1 − e^(−s/T))) + C/T·(e^(−s/T) ∗ e^(−s/τ))
 *
 * <p>Derived from dy/ds = (u − y)/T by variation of constants.
 */
public final class MotionPiece {
  private final Target target;
  private final double[] shares;
  private final double[] from;
  private final double[] timeConstants;
  private final boolean rises;
  private final boolean falls;

  MotionPiece(Target target, double[] shares, double[] from, double[] timeConstants) {
    this.target = target;
    this.shares = shares;
    this.from = from;
    this.timeConstants = timeConstants;
    double wanted = target.piece().first();
    int direction = target.piece().direction();
    boolean anyRises = false;
    boolean anyFalls = false;
    for (double y : from) {
      anyRises |= y < wanted || (y == wanted && direction > 0);
      anyFalls |= y > wanted || (y == wanted && direction < 0);
    }
    this.rises = anyRises;
    this.falls = anyFalls;
  }

  /** What the cells go towards. */
  public Target target() {
    return target;
  }

  /** The start in seconds. */
  public double start() {
    return target.piece().start();
  }

  /** The end in seconds; infinite for the last piece. */
  public double end() {
    return target.piece().end();
  }

  /** Whether a cell rises here. */
  public boolean rises() {
    return rises;
  }

  /** Whether a cell falls here. */
  public boolean falls() {
    return falls;
  }

  /** Number of cells. */
  public int cells() {
    return from.length;
  }

  /** The share of a cell in the openness; all shares sum to 1. */
  public double share(int cell) {
    return shares[cell];
  }

  /** The time constant in force for a cell here, in seconds. */
  public double timeConstant(int cell) {
    return timeConstants[cell];
  }

  /** The distance u − y of a cell from its target at the start. */
  public double distance(int cell) {
    return target.piece().first() - from[cell];
  }

  /** The shortest time constant at work here, in seconds. */
  public double shortestTimeConstant() {
    double shortest = timeConstants[0];
    for (double timeConstant : timeConstants) {
      shortest = Math.min(shortest, timeConstant);
    }
    Piece piece = target.piece();
    return piece.amplitude() == 0 ? shortest : Math.min(shortest, piece.timeConstant());
  }

  /** The longest time constant at work here, in seconds. */
  public double longestTimeConstant() {
    double longest = timeConstants[0];
    for (double timeConstant : timeConstants) {
      longest = Math.max(longest, timeConstant);
    }
    Piece piece = target.piece();
    return piece.amplitude() == 0 ? longest : Math.max(longest, piece.timeConstant());
  }

  /** The openness so many seconds after the start, 0 to 1. */
  public double openness(double seconds) {
    double openness = 0;
    for (int i = 0; i < from.length; i++) {
      openness += shares[i] * cell(i, seconds);
    }
    return Math.max(0, Math.min(1, openness));
  }

  /** The state of a cell so many seconds after the start, 0 to 1. */
  public double cell(int index, double seconds) {
    Piece u = target.piece();
    double timeConstant = timeConstants[index];
    double left = Math.exp(-seconds / timeConstant);
    double state = u.constant() + (from[index] - u.constant()) * left;
    if (u.slope() != 0) {
      state += u.slope() * (seconds + timeConstant * Math.expm1(-seconds / timeConstant));
    }
    if (u.amplitude() != 0) {
      double rate = 1 / timeConstant;
      state += u.amplitude() * rate * Convolution.of(rate, 1 / u.timeConstant(), seconds);
    }
    return state;
  }
}
