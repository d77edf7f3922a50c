package thudbook.plots;

import java.util.List;
import java.util.StringJoiner;
import thudbook.gates.Transfer;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.Sound;
import thudbook.wording.ReadableNumbers;

/** The large plot in words and numbers, for readers who don't see it. */
final class ShapeWords {
  private ShapeWords() {}

  static String of(Prediction prediction, Sound sound) {
    Metrics metrics = prediction.metrics();
    StringJoiner words = new StringJoiner(" ");
    words.add("Output level and control voltage over the time after the strike.");
    List<Double> train = ShapePlot.train(sound);
    if (!train.isEmpty()) {
      words.add(
          train.size()
              + " strikes, the last at "
              + ReadableNumbers.seconds(train.get(train.size() - 1))
              + "; these numbers are of one strike from rest.");
    }
    if (metrics.reach() == Reach.SILENT) {
      words.add("Silent: the control voltage never exceeds the threshold.");
    }
    String peakTime =
        metrics.get(Metric.PEAK_TIME).isPresent()
            ? " at " + seconds(metrics, Metric.PEAK_TIME)
            : "";
    metrics
        .get(Metric.PEAK_DB)
        .ifPresent(peak -> words.add("Peak " + ReadableNumbers.decibels(peak) + peakTime + "."));
    time(words, metrics, Metric.DEAD_TIME, "Dead time ");
    time(words, metrics, Metric.ATTACK, "Attack ");
    time(words, metrics, Metric.HOLD, "Hold ");
    time(words, metrics, Metric.RELEASE_20, "From the end of the hold to −20 dB ");
    time(words, metrics, Metric.RELEASE_40, "To −40 dB ");
    time(words, metrics, Metric.RELEASE_60, "To −60 dB ");
    time(words, metrics, Metric.LET_GO, "The low-pass gate lets go at ");
    metrics
        .get(Metric.FLOOR_DB)
        .ifPresent(
            floor -> words.add("Floor " + ReadableNumbers.decibels(floor) + " against the peak."));
    for (int i = 0; i < sound.stages().size(); i++) {
      Transfer transfer = sound.stages().get(i).channel().transfer();
      words.add(
          (sound.stages().size() > 1 ? "Stage " + (i + 1) + ": threshold " : "Threshold ")
              + ReadableNumbers.volts(transfer.thresholdVolts())
              + ", ceiling "
              + ReadableNumbers.volts(transfer.ceilingVolts())
              + ".");
    }
    return words.toString();
  }

  private static void time(StringJoiner words, Metrics metrics, Metric metric, String name) {
    if (metrics.get(metric).isPresent()) {
      words.add(name + seconds(metrics, metric) + ".");
    }
  }

  private static String seconds(Metrics metrics, Metric metric) {
    return ReadableNumbers.seconds(metrics.get(metric).orElse(0));
  }
}
