package thudbook.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.StageMetrics;
import thudbook.recipes.Recipe;
import thudbook.wording.Cautions;
import thudbook.wording.MetricWords;
import thudbook.wording.ReachWords;
import thudbook.wording.Reading;

/** A prediction as aligned text, in the words of the pages. */
final class Report {
  private static final String LINE = "  %-23s %12s%s";

  private final List<String> lines = new ArrayList<>();

  private Report() {}

  /** The lines of a report, the last one empty. */
  static List<String> of(Recipe recipe, Prediction prediction) {
    Report report = new Report();
    Metrics metrics = prediction.metrics();
    report.lines.add(recipe.title() + " (" + ReachWords.brief(metrics.reach()) + ")");
    for (MetricWords.Group group : MetricWords.Group.values()) {
      report.group(group, metrics);
    }
    for (int i = 0; i < prediction.stages().size() && prediction.stages().size() > 1; i++) {
      report.stage(recipe, i, prediction.stages().get(i));
    }
    for (Cautions.Caution caution : Cautions.of(metrics)) {
      report.add("");
      report.add(caution.title() + ". " + caution.text());
    }
    report.add("");
    return report.lines;
  }

  private void group(MetricWords.Group group, Metrics metrics) {
    add("");
    add(group.title());
    for (MetricWords words : MetricWords.of(group)) {
      Metric metric = words.metric();
      add(
          String.format(
              Locale.ROOT,
              LINE,
              words.name(),
              Reading.of(metric, metrics.get(metric)),
              metrics.envelopeOnly().contains(metric) ? "  envelope only" : ""));
    }
  }

  private void stage(Recipe recipe, int index, StageMetrics stage) {
    add("");
    add(
        String.format(
            Locale.ROOT,
            "Stage %d, %s, %s: %s",
            index + 1,
            recipe.stages().get(index).gate(),
            recipe.stages().get(index).channel(),
            ReachWords.brief(stage.reach())));
    line(Metric.DEAD_TIME, stage.deadTime());
    line(Metric.FLAT_TIME, stage.flatTime());
    line(Metric.LET_GO, stage.letGo());
    line(Metric.IGNORED_SHARE, stage.ignoredShare());
    line(Metric.PEAK_OPENNESS, stage.peakOpenness());
  }

  private void line(Metric metric, @Nullable Double value) {
    add(
        String.format(
            Locale.ROOT, LINE, MetricWords.of(metric).name(), Reading.of(metric, value), ""));
  }

  /** Terminals break no lines of ours, and a plain minus can be searched for. */
  private void add(String line) {
    lines.add(line.replace('\u00a0', ' ').replace('\u2212', '-'));
  }
}
