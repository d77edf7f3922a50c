package thudbook.predictions;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Solves z′ = ω·(d − z) over a step of time by collocation: z is the polynomial that starts from
 * its known value and obeys the equation at the nodes. Times are shares of the step, 0 to 1.
 *
 * <p>The nodes are those of Chebyshev and Radau, x = (1 + cos(2πj/(2n−1)))/2, which lie densest at
 * both ends and include the end but not the start; so the answer at the end is one of the values,
 * and steps much longer than 1/ω stay stable. The derivative of a polynomial at its nodes is a
 * matrix, D_ij = (w_j/w_i)/(x_i − x_j), D_ii = −Σ D_ij, with w the barycentric weights 1/∏(x_i −
 * x_k) (J.-P. Berrut and L. N. Trefethen, Barycentric Lagrange interpolation, SIAM Review 46
 * (2004), from memory).
 */
final class Collocation {
  /** The start, then the nodes up to 1. */
  private final double[] places;

  private final double[] weights;
  private final double[][] derivative;

  /** What makes the value at the start of the values at the nodes. */
  private final double[] towardsStart;

  Collocation(int nodes) {
    places = new double[nodes + 1];
    for (int j = 0; j < nodes; j++) {
      places[nodes - j] = (1 + Math.cos(2 * Math.PI * j / (2 * nodes - 1))) / 2;
    }
    weights = new double[nodes + 1];
    towardsStart = new double[nodes + 1];
    for (int i = 0; i <= nodes; i++) {
      double product = 1;
      double ahead = 1;
      for (int k = 0; k <= nodes; k++) {
        product *= k == i ? 1 : places[i] - places[k];
        ahead *= k == i || k == 0 ? 1 : -places[k] / (places[i] - places[k]);
      }
      weights[i] = 1 / product;
      towardsStart[i] = i == 0 ? -1 : ahead;
    }
    derivative = new double[nodes + 1][nodes + 1];
    for (int i = 0; i <= nodes; i++) {
      for (int j = 0; j <= nodes; j++) {
        if (j != i) {
          derivative[i][j] = weights[j] / weights[i] / (places[i] - places[j]);
          derivative[i][i] -= derivative[i][j];
        }
      }
    }
  }

  /** The number of places, the start among them. */
  int count() {
    return places.length;
  }

  /** A place, 0 to 1. */
  double place(int index) {
    return places[index];
  }

  /**
   * z at all places.
   *
   * @param omegaStep ω times the length of the step
   * @param start z at the start
   * @param d its drive at all places
   */
  double[] follow(double omegaStep, double start, double[] d) {
    int nodes = places.length - 1;
    RealMatrix matrix = MatrixUtils.createRealMatrix(nodes, nodes);
    double[] right = new double[nodes];
    for (int i = 1; i <= nodes; i++) {
      for (int j = 1; j <= nodes; j++) {
        matrix.setEntry(i - 1, j - 1, derivative[i][j] + (i == j ? omegaStep : 0));
      }
      right[i - 1] = omegaStep * d[i] - derivative[i][0] * start;
    }
    double[] atNodes =
        new LUDecomposition(matrix).getSolver().solve(new ArrayRealVector(right, false)).toArray();
    double[] z = new double[nodes + 1];
    z[0] = start;
    System.arraycopy(atNodes, 0, z, 1, nodes);
    return z;
  }

  /**
   * How far the polynomial through the nodes misses the value at the start, which lies outside
   * them: more than what it is off between them, as a rule.
   */
  double miss(double[] values) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += towardsStart[i] * values[i];
    }
    return Math.abs(sum);
  }

  /** The polynomial through the values at all places. */
  double between(double[] values, double place) {
    double above = 0;
    double below = 0;
    for (int i = 0; i < values.length; i++) {
      if (place == places[i]) {
        return values[i];
      }
      double share = weights[i] / (place - places[i]);
      above += share * values[i];
      below += share;
    }
    return above / below;
  }
}
