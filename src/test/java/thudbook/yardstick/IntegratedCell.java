package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.ode.DenseOutputModel;
import org.hipparchus.ode.ExpandableODE;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * One cell of a photoresistor, dy/dt = (u − y)/τ, integrated by the library's embedded Runge–Kutta
 * pair of order 8(5,3). The integration is cut where the target has a corner and where the target
 * passes the cell: between two cuts the right-hand side is smooth. (The library's own event
 * detection is not used: it does not return when the target and the cell differ by rounding only.)
 */
final class IntegratedCell {
  /** The state between two cuts: dense output over time since the corner, or a constant. */
  private record Span(double corner, double from, double to, DenseOutputModel model, double value) {
    double start() {
      return corner + from;
    }

    double end() {
      return corner + to;
    }

    double at(double local) {
      return model == null
          ? value
          : model.getInterpolatedState(Math.min(Math.max(local, from), to)).getPrimaryState()[0];
    }
  }

  private final double openingSeconds;
  private final double releaseSeconds;
  private final double tolerance;
  private final List<Span> spans = new ArrayList<>();
  private double state;
  private int evaluations;

  IntegratedCell(double openingSeconds, double releaseSeconds, double rest, double tolerance) {
    this.openingSeconds = openingSeconds;
    this.releaseSeconds = releaseSeconds;
    this.tolerance = tolerance;
    this.state = rest;
  }

  /** Goes on from one corner of the target to the next; the target is monotone between them. */
  void follow(DoubleUnaryOperator target, double start, double end) {
    double span = end - start;
    double u0 = target.applyAsDouble(start);
    double u1 = target.applyAsDouble(end);
    if (u0 == u1 && state == u0) {
      spans.add(new Span(start, 0, span, null, state));
      return;
    }
    double gap = u0 - state;
    boolean level = Math.abs(gap) < 1e-13;
    boolean opening = level ? u1 > u0 : gap > 0;
    boolean maySwitch = !level && (opening ? u1 < u0 : u1 > u0);
    double before = state;
    integrate(target, start, 0, span, opening);
    if (maySwitch) {
      double local = passing(target, spans.get(spans.size() - 1), opening);
      if (local < span) {
        spans.remove(spans.size() - 1);
        state = before;
        integrate(target, start, 0, local, opening);
        integrate(target, start, local, span, !opening);
      }
    }
  }

  /**
   * Where the target passes a cell that goes on as before, the end if nowhere. Their gap is
   * monotone until it has changed its sign, and may vanish in rounding after that: so look on the
   * way, too.
   */
  private static double passing(DoubleUnaryOperator target, Span span, boolean opening) {
    double length = span.end() - span.start();
    double low = 0;
    double high = length;
    for (int i = 0; i <= 400; i++) {
      double local = i < 200 ? length * Math.pow(10, i / 25.0 - 8) : length * (i - 200) / 200;
      double gap = target.applyAsDouble(span.start() + local) - span.at(local);
      if (Math.abs(gap) > 1e-10 && gap > 0 != opening) {
        high = Math.min(high, local);
      }
    }
    double gap = target.applyAsDouble(span.start() + high) - span.at(high);
    if (gap > 0 == opening || gap == 0) {
      return length;
    }
    for (int i = 0; i < 100; i++) {
      double middle = low + (high - low) / 2;
      if (target.applyAsDouble(span.start() + middle) > span.at(middle) == opening) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private void integrate(
      DoubleUnaryOperator target, double start, double from, double to, boolean opening) {
    double tau = opening ? openingSeconds : releaseSeconds;
    if (to - from < 1e-9 * tau) {
      // Too short for the integrator's own step control, and for any change above 1e-9 of the gap.
      spans.add(new Span(start, from, to, null, state));
      state += (target.applyAsDouble(start + to) - state) * (to - from) / tau;
      return;
    }
    // Near the limit of stability, about 6 τ, the dense output wavers by far more than the
    // tolerance.
    double longest = Math.min(to - from, 3 * tau);
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(1e-18, longest, tolerance, tolerance);
    // The default first step assumes a smooth start; a share of the time constant is safer.
    integrator.setInitialStepSize(Math.min(to - from, 0.02 * tau));
    DenseOutputModel model = new DenseOutputModel();
    integrator.addStepHandler(model);
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 1;
          }

          @Override
          public double[] computeDerivatives(double s, double[] y) {
            return new double[] {(target.applyAsDouble(start + s) - y[0]) / tau};
          }
        };
    ODEStateAndDerivative last =
        integrator.integrate(
            new ExpandableODE(equation), new ODEState(from, new double[] {state}), to);
    evaluations += integrator.getEvaluations();
    state = last.getPrimaryState()[0];
    spans.add(new Span(start, from, to, model, Double.NaN));
  }

  /** The state at a time that has been integrated. */
  double at(double seconds) {
    int low = 0;
    int high = spans.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (spans.get(middle).start() <= seconds) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return spans.get(low).at(seconds - spans.get(low).corner());
  }

  int evaluations() {
    return evaluations;
  }
}
