package thudbook.sources;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;

/** Integrals by a general-purpose integrator of the library, to compare closed forms with. */
final class Quadrature {
  private static final int EVALUATIONS = 10_000_000;

  private Quadrature() {}

  /** The integral from a to b, adaptively to 1e-13. */
  static double integral(DoubleUnaryOperator f, double a, double b) {
    return new IterativeLegendreGaussIntegrator(24, 1e-13, 1e-300)
        .integrate(EVALUATIONS, f::applyAsDouble, a, b);
  }

  /** The integral of f^order ∏ 1/(1 + (f/p)²) over a band, in ln f and one nat at a time. */
  static double moment(int order, double from, double to, double... poleHertz) {
    double width = Math.log(to / from);
    int pieces = (int) Math.ceil(width);
    double sum = 0;
    for (int i = 0; i < pieces; i++) {
      sum +=
          integral(
              nats -> {
                double f = from * Math.exp(nats);
                return Math.pow(f, order + 1) * passed(f, poleHertz);
              },
              width * i / pieces,
              width * (i + 1) / pieces);
    }
    return sum;
  }

  /** ∏ 1/(1 + (f/p)²). */
  static double passed(double hertz, double... poleHertz) {
    double passed = 1;
    for (double pole : poleHertz) {
      passed /= 1 + hertz / pole * (hertz / pole);
    }
    return passed;
  }
}
