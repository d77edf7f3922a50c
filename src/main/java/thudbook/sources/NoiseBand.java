package thudbook.sources;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Integrals of f^k ∏ 1/(1 + (f/p)²) over a band of frequencies a to b, k = −1, 0, 1.
 *
 * <p>One and two poles p ≤ q have closed forms, derived here from partial fractions. Written in the
 * textbook way they subtract nearly equal numbers where the poles are nearly equal; here each
 * difference of arcus tangents or logarithms is one function of the difference, so that equal poles
 * are no special case but a limit without loss:
 *
 * <ul>
 *   <li>A(p) = atan(p(b−a)/(p² + ab)), the difference atan(b/p) − atan(a/p)
 *   <li>E = (A(p) − A(q))/(q − p) = atan((q−p)N)/(q−p), N = (b−a)(pq − ab)/((p²+ab)(q²+ab) +
 *       pq(b−a)²)
 *   <li>K = log1p((q²−p²)M)/(q²−p²), M = (b²−a²)/((p²+a²)(q²+b²))
 *   <li>P(p) = log1p(p²(b²−a²)/(a²(p²+b²)))
 * </ul>
 *
 * <pre>
 *            no pole       one pole                          two poles
 *   k = −1   ln(b/a)       P(p)/2                            (P(p) − p²K)/2
 *   k =  0   b − a         p·A(p)                            pq/(p+q)·(A(p) + p·E)
 *   k =  1   (b²−a²)/2     (p²/2)·log1p((b²−a²)/(p²+a²))     (p²q²/2)·K
 * </pre>
 *
 * <p>Where both poles lie far below the band the forms for k ≤ 0 still cancel, and more than two
 * poles have no short form; both are summed by Gauss–Legendre in ln f. There the integrand's only
 * singularities are at ln p ± jπ/2, π/2 off the axis wherever the poles are, so panels of one nat
 * with 12 points converge like 1e-12 for every choice of poles.
 */
final class NoiseBand {
  /** The power of the frequency under the integral. */
  enum Order {
    RECIPROCAL,
    ZEROTH,
    FIRST;

    /** f^k df over d(ln f), which is f^(k+1). */
    private double perNat(double f) {
      return switch (this) {
        case RECIPROCAL -> 1;
        case ZEROTH -> f;
        case FIRST -> f * f;
      };
    }
  }

  /** Poles so many times above the band pass it whole: (b/p)² is below the last digit. */
  private static final double TRANSPARENT = 1e9;

  /** Where both poles are so many times below the band, the closed forms lose three digits. */
  private static final double FAR_BELOW = 30;

  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

  private final double a;
  private final double b;
  private final double ab;

  /** (b − a)(b + a), without the cancellation of b² − a². */
  private final double squares;

  private final double[] hertz;
  private final double[] nats;

  NoiseBand(double fromHertz, double toHertz) {
    a = fromHertz;
    b = toHertz;
    ab = a * b;
    squares = (b - a) * (b + a);
    double width = Math.log1p((b - a) / a);
    int panels = (int) Math.ceil(width);
    int points = RULE.getNumberOfPoints();
    hertz = new double[panels * points];
    nats = new double[hertz.length];
    double halfPanel = width / panels / 2;
    for (int i = 0; i < hertz.length; i++) {
      double centre = (2 * (i / points) + 1) * halfPanel;
      hertz[i] = a * Math.exp(centre + RULE.getPoint(i % points) * halfPanel);
      nats[i] = RULE.getWeight(i % points) * halfPanel;
    }
  }

  /**
   * The integral of f^k ∏ 1/(1 + (f/p)²) over the band.
   *
   * @param poleHertz any number of poles, each at least {@link Spectrum#LOWEST_POLE_HERTZ}
   * @return the integral, to 1e-12 with up to two poles and 1e-9 with more, relative
   */
  double moment(Order order, double... poleHertz) {
    int count = 0;
    double p = Double.POSITIVE_INFINITY;
    double q = Double.POSITIVE_INFINITY;
    for (double pole : poleHertz) {
      if (pole < TRANSPARENT * b) {
        count++;
        q = Math.max(p, Math.min(pole, q));
        p = Math.min(p, pole);
      }
    }
    return switch (count) {
      case 0 -> withoutPole(order);
      case 1 -> onePole(order, p);
      case 2 -> FAR_BELOW * q < a ? quadrature(order, poleHertz) : twoPoles(order, p, q);
      default -> quadrature(order, poleHertz);
    };
  }

  private double withoutPole(Order order) {
    return switch (order) {
      case RECIPROCAL -> Math.log1p((b - a) / a);
      case ZEROTH -> b - a;
      case FIRST -> squares / 2;
    };
  }

  private double onePole(Order order, double p) {
    return switch (order) {
      case RECIPROCAL -> reciprocalLogarithm(p) / 2;
      case ZEROTH -> p * arc(p);
      case FIRST -> p * p / 2 * Math.log1p(squares / (p * p + a * a));
    };
  }

  private double twoPoles(Order order, double p, double q) {
    return switch (order) {
      case RECIPROCAL -> (reciprocalLogarithm(p) - p * p * logarithmSlope(p, q)) / 2;
      case ZEROTH -> p * q / (p + q) * (arc(p) + p * arcSlope(p, q));
      case FIRST -> p * p * (q * q) / 2 * logarithmSlope(p, q);
    };
  }

  /** A(p). */
  private double arc(double p) {
    return Math.atan(p * (b - a) / (p * p + ab));
  }

  /** E. */
  private double arcSlope(double p, double q) {
    double limit =
        (b - a) * (p * q - ab) / ((p * p + ab) * (q * q + ab) + p * q * (b - a) * (b - a));
    double apart = q - p;
    return apart == 0 ? limit : Math.atan(apart * limit) / apart;
  }

  /** P(p). */
  private double reciprocalLogarithm(double p) {
    return Math.log1p(p * p * squares / (a * a * (p * p + b * b)));
  }

  /** K. */
  private double logarithmSlope(double p, double q) {
    double limit = squares / ((p * p + a * a) * (q * q + b * b));
    double apart = (q - p) * (q + p);
    return apart == 0 ? limit : Math.log1p(apart * limit) / apart;
  }

  private double quadrature(Order order, double... poleHertz) {
    double[] inverseSquares = Spectrum.inverseSquares(poleHertz);
    double sum = 0;
    for (int i = 0; i < hertz.length; i++) {
      double square = hertz[i] * hertz[i];
      double divisor = 1;
      for (double inverseSquare : inverseSquares) {
        divisor *= 1 + square * inverseSquare;
      }
      sum += order.perNat(hertz[i]) * nats[i] / divisor;
    }
    return sum;
  }
}
