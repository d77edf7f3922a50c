package thudbook.predictions;

import java.util.ArrayList;
import java.util.List;

/** The peaks of the strikes of a train, and whether they can be told apart. */
final class TrainMetrics {
  /** A dip that separates two strikes, in dB (chosen by the model's description). */
  private static final double SEPARATING_DB = 10;

  private TrainMetrics() {}

  static List<StrikeMetrics> of(Trace train, List<Double> strikes) {
    int count = strikes.size();
    double[] peaks = new double[count];
    double[] times = new double[count];
    for (int k = 0; k < count; k++) {
      double from = strikes.get(k);
      double to = k + 1 < count ? strikes.get(k + 1) : Double.POSITIVE_INFINITY;
      peaks[k] = train.top(from, to);
      times[k] = train.firstAtLeast(peaks[k] * (1 - 1e-12), from).orElse(from);
    }
    List<StrikeMetrics> metrics = new ArrayList<>(count);
    for (int k = 0; k < count; k++) {
      Boolean separated = null;
      if (k + 1 < count) {
        double dip = train.bottom(times[k], times[k + 1]);
        double lower = Math.min(peaks[k], peaks[k + 1]);
        separated = LevelMetrics.decibels(dip / lower) <= -SEPARATING_DB;
      }
      metrics.add(new StrikeMetrics(LevelMetrics.decibels(peaks[k]), separated));
    }
    return metrics;
  }
}
