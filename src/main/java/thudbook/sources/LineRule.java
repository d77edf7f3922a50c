package thudbook.sources;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealVector;

/**
 * A few lines that stand for very many in sums Σ P_k g(f_k) over smooth g, as a Gauss rule stands
 * for an integral. A sawtooth of 20 Hz has a thousand harmonics, one of 0.01 Hz two million, and a
 * square modulator thousands of sides; every level of a prediction sums over all of them.
 *
 * <p>The lines are taken in blocks of 0.35 nats. A block of more than 16 is replaced by the 8 nodes
 * of the Gauss rule of its own discrete measure, with ln f as the variable: the recurrence
 * coefficients by Stieltjes' procedure, the nodes and weights from the eigenvalues and first
 * eigenvector components of the Jacobi matrix (G. H. Golub and J. H. Welsch, Calculation of Gauss
 * quadrature rules, Math. Comp. 23 (1969)). What poles pass is analytic in ln f to π/2 off the
 * axis, so that degree 15 over half a block of 0.175 is right to 1e-10 for eight poles and to the
 * last digits for two.
 */
final class LineRule {
  private static final double BLOCK_NATS = 0.35;
  private static final int NODES = 8;
  private static final int KEPT_WHOLE = 2 * NODES;

  /** Below this share of the first norm, a block has no more points that matter than nodes. */
  private static final double EXHAUSTED = 1e-28;

  private double[] hertz = new double[256];
  private double[] power = new double[256];
  private int size;

  private double[] blockNats = new double[256];
  private double[] blockPower = new double[256];
  private int blockSize;

  /**
   * Condenses lines.
   *
   * @param partials at least one, from the lowest frequency to the highest
   */
  LineRule(List<Partial> partials) {
    double blockStart = Double.NEGATIVE_INFINITY;
    for (Partial partial : partials) {
      if (partial.power() > 0) {
        double nats = Math.log(partial.hertz());
        if (nats > blockStart + BLOCK_NATS) {
          closeBlock();
          blockStart = nats;
        }
        if (blockSize == blockNats.length) {
          blockNats = Arrays.copyOf(blockNats, 2 * blockSize);
          blockPower = Arrays.copyOf(blockPower, 2 * blockSize);
        }
        blockNats[blockSize] = nats;
        blockPower[blockSize++] = partial.power();
      }
    }
    closeBlock();
  }

  /** The frequencies of the rule, in hertz. */
  double[] hertz() {
    return Arrays.copyOf(hertz, size);
  }

  /** The powers of the rule; they sum to the power of all lines. */
  double[] power() {
    return Arrays.copyOf(power, size);
  }

  private void closeBlock() {
    if (blockSize <= KEPT_WHOLE) {
      for (int i = 0; i < blockSize; i++) {
        add(blockNats[i], blockPower[i]);
      }
    } else {
      addGaussNodes();
    }
    blockSize = 0;
  }

  private void add(double nats, double itsPower) {
    if (size == hertz.length) {
      hertz = Arrays.copyOf(hertz, 2 * size);
      power = Arrays.copyOf(power, 2 * size);
    }
    hertz[size] = Math.exp(nats);
    power[size++] = itsPower;
  }

  private void addGaussNodes() {
    double centre = (blockNats[0] + blockNats[blockSize - 1]) / 2;
    double half = (blockNats[blockSize - 1] - blockNats[0]) / 2;
    double[] diagonal = new double[NODES];
    double[] beside = new double[NODES - 1];
    double[] last = new double[blockSize];
    double[] current = new double[blockSize];
    Arrays.fill(current, 1);
    double total = 0;
    for (int i = 0; i < blockSize; i++) {
      blockNats[i] = (blockNats[i] - centre) / half;
      total += blockPower[i];
    }
    double norm = total;
    double ratio = 0;
    int nodes = 0;
    while (true) {
      double mean = 0;
      for (int i = 0; i < blockSize; i++) {
        mean += blockPower[i] * blockNats[i] * current[i] * current[i];
      }
      mean /= norm;
      diagonal[nodes++] = mean;
      if (nodes == NODES) {
        break;
      }
      double nextNorm = 0;
      for (int i = 0; i < blockSize; i++) {
        double next = (blockNats[i] - mean) * current[i] - ratio * last[i];
        last[i] = current[i];
        current[i] = next;
        nextNorm += blockPower[i] * next * next;
      }
      if (nextNorm <= EXHAUSTED * total) {
        break;
      }
      ratio = nextNorm / norm;
      beside[nodes - 1] = Math.sqrt(ratio);
      norm = nextNorm;
    }
    EigenDecompositionSymmetric jacobi =
        new EigenDecompositionSymmetric(
            Arrays.copyOf(diagonal, nodes), Arrays.copyOf(beside, nodes - 1));
    for (int i = 0; i < nodes; i++) {
      RealVector vector = jacobi.getEigenvector(i);
      double first = vector.getEntry(0);
      add(centre + half * jacobi.getEigenvalue(i), total * first * first);
    }
  }
}
