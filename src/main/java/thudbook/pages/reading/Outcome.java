package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.drawings.Format;
import thudbook.plots.DataTable;
import thudbook.plots.ShapePlot;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;
import thudbook.predictions.StageMetrics;
import thudbook.predictions.StrikeMetrics;
import thudbook.recipes.Listening;
import thudbook.wording.Cautions;
import thudbook.wording.Explanation;
import thudbook.wording.MetricWords;
import thudbook.wording.ReachWords;
import thudbook.wording.ReadableNumbers;
import thudbook.wording.Reading;

/**
 * What will be heard, as it is shown.
 *
 * @param figures the large plot with its numbers; of a train two: one strike, and all of them
 * @param stages one column per stage; empty: there is only one
 * @param strikes one line per strike; empty: there is only one
 */
public record Outcome(
    List<ShapePlot.Figure> figures,
    List<String> sentences,
    List<Numbers> numbers,
    List<DataTable> stages,
    List<DataTable> strikes,
    List<Cautions.Caution> cautions) {

  /** One table of numbers. */
  public record Numbers(String title, List<Line> lines) {}

  /**
   * One number.
   *
   * @param envelopeOnly whether it is too short against the source to be heard as such
   * @param was what it was before; empty: the same, or there is no before
   */
  public record Line(String name, String value, String meaning, boolean envelopeOnly, String was) {}

  /**
   * What a prediction shows against an earlier one.
   *
   * @param earlier null: there is none
   * @param widths one drawing each
   */
  public static Outcome of(
      Sound sound, Listening listening, ShapePlot.@Nullable Earlier earlier, List<Format> widths) {
    Prediction prediction = listening.drawn(sound);
    Metrics before = earlier == null ? null : earlier.prediction().metrics();
    return new Outcome(
        ShapePlot.figures(sound, listening::drawn, earlier, widths),
        Explanation.of(sound, prediction),
        Arrays.stream(MetricWords.Group.values())
            .map(group -> numbers(group, prediction.metrics(), before))
            .toList(),
        prediction.stages().size() > 1 ? List.of(stages(sound, prediction.stages())) : List.of(),
        prediction.strikes().size() > 1 ? List.of(strikes(sound, prediction.strikes())) : List.of(),
        Cautions.of(prediction.metrics()));
  }

  private static Numbers numbers(
      MetricWords.Group group, Metrics metrics, @Nullable Metrics before) {
    List<Line> lines = new ArrayList<>();
    for (MetricWords words : MetricWords.of(group)) {
      Metric metric = words.metric();
      if (metric == Metric.BUILD_UP && metrics.get(metric).isEmpty()) {
        continue;
      }
      lines.add(
          new Line(
              words.name(),
              Reading.of(metric, metrics.get(metric)),
              words.meaning(),
              metrics.envelopeOnly().contains(metric),
              was(metric, metrics, before)));
    }
    if (group == MetricWords.Group.CONTROL) {
      lines.add(
          new Line(
              "Reach",
              ReachWords.brief(metrics.reach()),
              ReachWords.meaning(metrics.reach()),
              false,
              before == null || before.reach() == metrics.reach()
                  ? ""
                  : ReachWords.brief(before.reach())));
    }
    return new Numbers(group.title(), lines);
  }

  /** What a reader would have read before, if that was something else. */
  private static String was(Metric metric, Metrics metrics, @Nullable Metrics before) {
    if (before == null) {
      return "";
    }
    String was = Reading.of(metric, before.get(metric));
    return was.equals(Reading.of(metric, metrics.get(metric))) ? "" : was;
  }

  private static DataTable stages(Sound sound, List<StageMetrics> stages) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < stages.size(); i++) {
      StageMetrics stage = stages.get(i);
      rows.add(
          List.of(
              (i + 1) + ": " + sound.stages().get(i).channel().name(),
              Reading.of(Metric.DEAD_TIME, stage.deadTime()),
              Reading.of(Metric.FLAT_TIME, stage.flatTime()),
              Reading.of(Metric.LET_GO, stage.letGo()),
              Reading.of(Metric.IGNORED_SHARE, stage.ignoredShare()),
              Reading.of(Metric.PEAK_OPENNESS, stage.peakOpenness()),
              ReachWords.brief(stage.reach())));
    }
    return new DataTable(
        "Stage by stage",
        List.of(
            "Stage", "Dead time", "Flat time", "Lets go", "Envelope ignored", "Opens to", "Reach"),
        rows);
  }

  private static DataTable strikes(Sound sound, List<StrikeMetrics> strikes) {
    List<Double> times = sound.strikes() == null ? List.of() : sound.strikes().seconds();
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < strikes.size(); i++) {
      Boolean separated = strikes.get(i).separated();
      rows.add(
          List.of(
              String.valueOf(i + 1),
              i < times.size() ? ReadableNumbers.seconds(times.get(i)) : ReadableNumbers.ABSENT,
              ReadableNumbers.decibels(strikes.get(i).peakDb()),
              separated == null ? ReadableNumbers.ABSENT : separated ? "yes" : "no"));
    }
    return new DataTable(
        "Strike by strike",
        List.of("Strike", "At", "Peak", "Falls 10\u00a0dB before the next"),
        rows);
  }
}
