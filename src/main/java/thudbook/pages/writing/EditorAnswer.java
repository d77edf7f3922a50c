package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.documents.Experiment;
import thudbook.documents.Identity;
import thudbook.documents.SameIdentity;
import thudbook.drawings.Format;
import thudbook.equipment.Gate;
import thudbook.equipment.Rack;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.reading.Outcome;
import thudbook.pages.reading.PatchSheet;
import thudbook.plots.ShapePlot;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Sound;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.wording.MetricWords;
import thudbook.wording.Reading;

/**
 * What the notebook says to a form while it is written.
 *
 * @param outcome what will be heard; null: something is missing or wrong
 * @param missing what keeps it from being predicted
 * @param faults what is wrong, field by field
 * @param patch what is wrong with connections and settings, and what tied knobs come to
 * @param against what the numbers are compared with; empty: nothing, or nothing is different
 * @param status the numbers that count, in one line
 */
public record EditorAnswer(
    @Nullable Outcome outcome,
    List<String> missing,
    List<EditorFault> faults,
    List<String> patch,
    String against,
    String status) {

  /**
   * What a form is compared with.
   *
   * @param name such as "as it is saved"
   * @param shapes keeps its shape
   */
  record Earlier(String name, Recipe recipe, EarlierShapes shapes) {}

  /** Faults are asked for, not names: none is ever used. */
  private static final Identity NO_NAMES = new SameIdentity(new UUID(0, 0), "recipe");

  /** Whether nothing can be said for now, so that what was shown before may stay. */
  public boolean keeps() {
    return outcome == null && missing.isEmpty();
  }

  /** The answer to a form. */
  static EditorAnswer of(
      PostedForm form, Things<Gate> studio, Rack rack, @Nullable Earlier earlier) {
    List<Fault> faults = new ArrayList<>();
    Experiment experiment = null;
    try {
      experiment = Documents.experimentFromForm(form.recipe());
    } catch (Refusal refusal) {
      faults.addAll(refusal.faults());
    }
    List<String> patch = List.of();
    try {
      patch = PatchSheet.lines(Documents.RECIPE.fromForm(form.recipe(), NO_NAMES), rack);
    } catch (Refusal refusal) {
      refusal.faults().stream()
          .filter(fault -> !fault.code().equals("channel-not-kept"))
          .forEach(faults::add);
    }
    List<EditorFault> shown = EditorFault.of(faults, form.fields().keySet());
    if (experiment == null) {
      return new EditorAnswer(null, List.of(), shown, patch, "", "");
    }
    Listening listening = new Listening(experiment.in(studio));
    Resolution resolution = listening.hear(experiment.recipe()).resolution();
    Sound sound = resolution.sound();
    if (sound == null) {
      return new EditorAnswer(null, resolution.missing(), shown, patch, "", "");
    }
    ShapePlot.Earlier before = earlier == null ? null : before(earlier, sound, studio);
    return new EditorAnswer(
        Outcome.of(sound, listening, before, widths(form)),
        List.of(),
        shown,
        patch,
        before == null || earlier == null ? "" : earlier.name(),
        status(listening.prediction(sound).metrics()));
  }

  /** The earlier shape, if there is one and it was made by another sound. */
  private static ShapePlot.@Nullable Earlier before(
      Earlier earlier, Sound sound, Things<Gate> studio) {
    Sound before = Resolution.of(earlier.recipe(), studio).sound();
    return before == null || before.equals(sound) ? null : earlier.shapes().of(before);
  }

  /** A page that asks again at once tells which width it shows; another one gets all. */
  private static List<Format> widths(PostedForm form) {
    return switch (form.own("width")) {
      case "wide" -> List.of(Format.BESIDE);
      case "narrow" -> List.of(Format.NARROW);
      default -> ShapePlot.BESIDE_A_FORM;
    };
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
