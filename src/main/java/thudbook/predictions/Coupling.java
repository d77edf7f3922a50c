package thudbook.predictions;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
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
 * stages d is a sum of products, and v = d − z with z = ω·(e^(−ω·s) ∗ d) is found by Gauss–Legendre
 * quadrature on steps that are short beside every time constant at work.
 */
final class Coupling {
  /** Ratio of neighbouring places at which the largest value is looked for. */
  private static final double STEP = Math.sqrt(2);

  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

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
    return Scan.largest(Scan.growing(end, shortest / 16, STEP), magnitude);
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
    DoubleUnaryOperator offset =
        t -> trace.chain().offsetVolts(trace.opennessAt(t), trace.chain().stages());
    double low = offset.applyAsDouble(0);
    double largest = 0;
    double[] corners = trace.corners();
    for (int k = 0; k < corners.length; k++) {
      double end = k + 1 < corners.length ? corners[k + 1] : trace.horizonSeconds();
      double first = Math.min(trace.shortestTimeConstant(k), 1 / omega) / 8;
      double[] places = Scan.growing(end - corners[k], first, STEP);
      for (int i = 0; i + 1 < places.length; i++) {
        Step step = new Step(offset, low, corners[k] + places[i]);
        double to = corners[k] + places[i + 1];
        double middle = (step.from + to) / 2;
        double seen = Math.max(step.magnitude(middle), step.magnitude(to));
        if (seen > 0.9 * largest) {
          double peak = Roots.maximum(step.from, to, step::magnitude);
          largest = Math.max(largest, Math.max(seen, step.magnitude(peak)));
        }
        low = step.low(to);
      }
    }
    return largest;
  }

  /** A short step of time, with the low-passed offset z at its start. */
  private final class Step {
    private final DoubleUnaryOperator offset;
    private final double lowAtStart;
    private final double from;

    Step(DoubleUnaryOperator offset, double lowAtStart, double from) {
      this.offset = offset;
      this.lowAtStart = lowAtStart;
      this.from = from;
    }

    double magnitude(double t) {
      return Math.abs(offset.applyAsDouble(t) - low(t));
    }

    /** z at t: panels grow backwards from t, because the filter forgets with e^(−ω·s). */
    double low(double t) {
      double sum = lowAtStart * Math.exp(-omega * (t - from));
      double to = t;
      double length = 1 / omega;
      while (to > from && omega * (t - to) < 45) {
        double start = Math.max(from, to - length);
        double middle = (start + to) / 2;
        double half = (to - start) / 2;
        sum +=
            omega
                * half
                * RULE.integrate(
                    x -> {
                      double moment = middle + half * x;
                      return Math.exp(-omega * (t - moment)) * offset.applyAsDouble(moment);
                    });
        to = start;
        length *= 2;
      }
      return sum;
    }
  }
}
