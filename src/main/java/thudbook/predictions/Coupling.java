package thudbook.predictions;

import java.util.function.DoubleUnaryOperator;
import thudbook.envelopes.Piece;
import thudbook.gates.Convolution;
import thudbook.gates.Motion;
import thudbook.gates.MotionPiece;

/**
 * The offset behind the output's coupling high-pass of first order: v′ = −ω·v + d′, v(0) = 0, with
 * ω = 2π·coupling. Answers the largest |v|.
 *
 * <p>Behind one stage d = b·y, and each cell answers in closed form. With its distance d₀ from the
 * target and the target A + B·s + C·e^(−s/τ), its part of v goes from v₀ as
 *
 * <p>v(s) = v₀·e^(−ω·s) + d₀/T·E(ω, 1/T) + B·(E(ω, 0) − E(ω, 1/T)) − C/(τ·T)·E(ω, 1/T, 1/τ)
 *
 * <p>with E the convolutions of {@link Convolution}. Derived from y′ = (u − y)/T. Behind several
 * stages d is a sum of products, and v = d − z with z′ = ω·(d − z) is found by {@link Collocation}
 * on steps that begin anew at each corner, short beside every time constant at work, and grow as
 * far as what they are off allows.
 */
final class Coupling {
  /** Ratio of neighbouring places at which the largest value is looked for. */
  private static final double RATIO = Math.sqrt(2);

  /** For steps that are short beside every time constant: very many corners make very many. */
  private static final Collocation SHORT_STEP = new Collocation(4);

  private static final Collocation LONG_STEP = new Collocation(12);

  /** Up to this share of the shortest time constant a step is short. */
  private static final double SHORT = 1 / 16.0;

  /** What one step may be off, so that hundreds within 1/ω stay within 1e-9 V. */
  private static final double UNCERTAIN_VOLTS = 1e-11;

  /** Corners are not told more exactly than this. */
  private static final double SHORTEST_SECONDS = 1e-12;

  /** A value that is not nearly the largest is not the largest between the places either. */
  private static final double NEARLY = 0.9;

  private final double omega;

  Coupling(double hertz) {
    omega = 2 * Math.PI * hertz;
  }

  /** The largest |v| behind one stage, in volts. */
  double largestBehindOne(Motion motion, double bleedVolts) {
    double[] states = new double[motion.pieces().get(0).cells()];
    double largest = 0;
    for (MotionPiece piece : motion.pieces()) {
      double[] from = states.clone();
      DoubleUnaryOperator magnitude = s -> Math.abs(bleedVolts * offset(piece, from, s));
      double length = piece.end() - piece.start();
      largest = Math.max(largest, largestOn(piece, length, magnitude));
      for (int i = 0; i < states.length && length < Double.POSITIVE_INFINITY; i++) {
        states[i] = cell(piece, i, from[i], length);
      }
    }
    return largest;
  }

  private double largestOn(MotionPiece piece, double length, DoubleUnaryOperator magnitude) {
    double shortest = Math.min(piece.shortestTimeConstant(), 1 / omega);
    double longest = Math.max(piece.longestTimeConstant(), 1 / omega);
    double end = Math.min(length, 45 * longest);
    if (end == 0) {
      return 0;
    }
    return Scan.largest(Scan.growing(end, shortest / 16, RATIO), magnitude);
  }

  private double offset(MotionPiece piece, double[] from, double seconds) {
    double sum = 0;
    for (int i = 0; i < from.length; i++) {
      sum += piece.share(i) * cell(piece, i, from[i], seconds);
    }
    return sum;
  }

  private double cell(MotionPiece piece, int index, double from, double seconds) {
    Piece target = piece.target().piece();
    double rate = 1 / piece.timeConstant(index);
    double own = Convolution.of(omega, rate, seconds);
    double value = from * Math.exp(-omega * seconds) + piece.distance(index) * rate * own;
    if (target.slope() != 0) {
      value += target.slope() * (Convolution.of(omega, 0, seconds) - own);
    }
    if (target.amplitude() != 0) {
      double falling = 1 / target.timeConstant();
      value -= target.amplitude() * falling * rate * Convolution.of(omega, rate, falling, seconds);
    }
    return value;
  }

  /** The largest |v| behind several stages, in volts. */
  double largestBehindAll(Trace trace) {
    double low = trace.offsetIn(0, 0);
    double largest = 0;
    Intervals intervals = trace.intervals();
    for (int k = 0; k < intervals.count(); k++) {
      double end = intervals.end(k);
      double fastest = Math.min(intervals.shortestTimeConstant(k), 1 / omega);
      double from = intervals.start(k);
      double length = fastest / 2;
      while (from < end) {
        length = Math.min(length, end - from);
        Step step =
            new Step(trace, k, from, length, length > SHORT * fastest ? LONG_STEP : SHORT_STEP);
        if (step.uncertainVolts() > UNCERTAIN_VOLTS && step.rule == SHORT_STEP) {
          step = new Step(trace, k, from, length, LONG_STEP);
        }
        double uncertain = step.uncertainVolts();
        if (uncertain > UNCERTAIN_VOLTS && length > SHORTEST_SECONDS) {
          length /= 2;
          continue;
        }
        step.follow(low);
        largest = step.largest(largest);
        low = step.lowAtEnd();
        from = length < end - from ? from + length : end;
        length = uncertain < UNCERTAIN_VOLTS / 1000 ? 2 * length : length;
      }
    }
    return largest;
  }

  /** A step of time between two corners, with the offset at its places. */
  private final class Step {
    private final Trace trace;
    private final int interval;
    private final double from;
    private final double length;
    private final Collocation rule;
    private final double[] offsets;
    private double[] lows = new double[0];

    Step(Trace trace, int interval, double from, double length, Collocation rule) {
      this.trace = trace;
      this.interval = interval;
      this.from = from;
      this.length = length;
      this.rule = rule;
      offsets = new double[rule.count()];
      for (int i = 0; i < offsets.length; i++) {
        offsets[i] = offsetAt(rule.place(i));
      }
    }

    private double offsetAt(double place) {
      return trace.offsetIn(interval, from + length * place);
    }

    /** What the step may be off in z: it takes up no more than ω·length of what d is off. */
    double uncertainVolts() {
      return rule.miss(offsets) * Math.min(1, omega * length);
    }

    void follow(double lowAtStart) {
      lows = rule.follow(omega * length, lowAtStart, offsets);
    }

    double lowAtEnd() {
      return lows[lows.length - 1];
    }

    /** The larger of the largest |v| so far and of the one in this step. */
    double largest(double soFar) {
      double[] high = new double[offsets.length];
      int best = 0;
      for (int i = 0; i < high.length; i++) {
        high[i] = offsets[i] - lows[i];
        best = Math.abs(high[i]) > Math.abs(high[best]) ? i : best;
      }
      double seen = Math.abs(high[best]);
      if (seen <= NEARLY * soFar) {
        return soFar;
      }
      double before = rule.place(Math.max(0, best - 1));
      double after = rule.place(Math.min(high.length - 1, best + 1));
      double peak = Roots.maximum(before, after, x -> Math.abs(rule.between(high, x)));
      double refined = Math.abs(offsetAt(peak) - rule.between(lows, peak));
      return Math.max(soFar, Math.max(seen, refined));
    }
  }
}
