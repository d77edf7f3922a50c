package thudbook.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.documents.Experiment;
import thudbook.documents.Identity;
import thudbook.equipment.GateStore;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;

/**
 * What the notebook says to a form while it is written.
 *
 * @param outcome what will be heard; null: something is missing or wrong
 * @param missing what keeps it from being predicted
 * @param faults what is wrong, field by field
 * @param against what the numbers are compared with; empty: nothing, or nothing is different
 * @param status the numbers that count, in one line
 */
public record EditorAnswer(
    @Nullable Outcome outcome,
    List<String> missing,
    List<EditorFault> faults,
    String against,
    String status) {

  /**
   * What a form is compared with.
   *
   * @param name such as "saved"
   */
  record Earlier(String name, Recipe recipe) {}

  /** Whether nothing can be said for now, so that what was shown before may stay. */
  public boolean keeps() {
    return outcome == null && missing.isEmpty();
  }

  /** The answer to a form. */
  static EditorAnswer of(
      PostedForm form, Identity identity, GateStore studio, @Nullable Earlier earlier) {
    List<Fault> faults = new ArrayList<>();
    Experiment experiment = null;
    try {
      experiment = Documents.experimentFromForm(form.recipe());
    } catch (Refusal refusal) {
      faults.addAll(refusal.faults());
    }
    try {
      Documents.recipeFromForm(form.recipe(), identity);
    } catch (Refusal refusal) {
      refusal.faults().stream()
          .filter(fault -> !fault.code().equals("channel-not-kept"))
          .forEach(faults::add);
    }
    List<EditorFault> shown = EditorFault.of(faults, form.fields().keySet());
    if (experiment == null) {
      return new EditorAnswer(null, List.of(), shown, "", "");
    }
    Resolution resolution = Resolution.of(experiment.recipe(), experiment.in(studio));
    Sound sound = resolution.sound();
    if (sound == null) {
      return new EditorAnswer(null, resolution.missing(), shown, "", "");
    }
    Sound before =
        earlier == null ? null : Resolution.of(earlier.recipe(), studio).complete().orElse(null);
    if (before != null && before.equals(sound)) {
      before = null;
    }
    Prediction prediction = Predictor.predictWithCurve(sound);
    ShapePlot.Earlier behind =
        before == null ? null : new ShapePlot.Earlier(before, Predictor.predictWithCurve(before));
    return new EditorAnswer(
        Outcome.of(sound, prediction, behind, ShapePlot.BESIDE_A_FORM),
        List.of(),
        shown,
        before == null || earlier == null ? "" : earlier.name(),
        status(prediction.metrics()));
  }

  private static String status(Metrics metrics) {
    StringJoiner status = new StringJoiner(", ");
    for (Metric metric :
        List.of(Metric.PEAK_DB, Metric.HOLD, Metric.RELEASE_40, Metric.THUMP_PEAK)) {
      metrics
          .get(metric)
          .ifPresent(
              value -> status.add(MetricWords.of(metric).name() + " " + Reading.of(metric, value)));
    }
    return status + ".";
  }
}
