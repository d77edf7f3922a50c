package thudbook.drawings;

/**
 * Places labels side by side, each as near as can be to what it names, without touching.
 *
 * <p>With wanted starts sᵢ and the room oᵢ that all labels before i take, places pᵢ = zᵢ + oᵢ don't
 * touch exactly if z never falls; the z nearest to s − o in the sense of least squares is their
 * isotonic regression, found by pooling adjacent violators (Ayer, Brunk, Ewing, Reid and Silverman,
 * Ann. Math. Statist. 26, 1955; from memory).
 */
final class Spread {
  private Spread() {}

  /**
   * The starts of labels.
   *
   * @param centers where each wants its middle, in order
   * @param sizes how much room each needs
   * @param gap between neighbours
   * @param from where the first may start
   * @param to where the last may end; if there is too little room they run over it
   */
  static double[] starts(double[] centers, double[] sizes, double gap, double from, double to) {
    int n = centers.length;
    double[] mean = new double[n];
    int[] count = new int[n];
    int blocks = 0;
    double before = 0;
    double[] room = new double[n];
    for (int i = 0; i < n; i++) {
      room[i] = before;
      mean[blocks] = centers[i] - sizes[i] / 2 - before;
      count[blocks] = 1;
      blocks++;
      while (blocks > 1 && mean[blocks - 2] > mean[blocks - 1]) {
        int sum = count[blocks - 2] + count[blocks - 1];
        mean[blocks - 2] =
            (mean[blocks - 2] * count[blocks - 2] + mean[blocks - 1] * count[blocks - 1]) / sum;
        count[blocks - 2] = sum;
        blocks--;
      }
      before += sizes[i] + gap;
    }
    double last = to - (before - gap);
    double[] starts = new double[n];
    int i = 0;
    for (int block = 0; block < blocks; block++) {
      double z = Math.max(from, Math.min(last, mean[block]));
      for (int k = 0; k < count[block]; k++, i++) {
        starts[i] = z + room[i];
      }
    }
    return starts;
  }
}
