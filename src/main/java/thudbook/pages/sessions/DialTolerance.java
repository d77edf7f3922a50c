package thudbook.pages.sessions;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.equipment.Dialling;
import thudbook.equipment.Gate;
import thudbook.equipment.Rack;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.SoundValue;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Predictor;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.wording.Reading;

/**
 * How exactly a knob is read back, for a recall sheet: the values at both ends of its tolerance,
 * and whether the sound at one of the ends is plainly another one. A sheet only warns, so that the
 * two ends are enough for it; everything between is looked at by {@link
 * thudbook.patching.Tolerance}.
 */
final class DialTolerance {
  /** So far apart are two sounds still alike. */
  private static final double ALIKE_DECIBELS = 1.5;

  private static final double ALIKE_SHARE = 0.15;

  private final DialledSettings settings;
  private final Things<Gate> studio;
  private final @Nullable Metrics exact;

  /**
   * The tolerances of a recipe's knobs.
   *
   * @param exact the metrics of the recipe as it is written; null: it is not complete
   */
  DialTolerance(Recipe recipe, Rack rack, Things<Gate> studio, @Nullable Metrics exact) {
    this.settings = DialledSettings.of(recipe, rack);
    this.studio = studio;
    this.exact = exact;
  }

  /** The tolerance of a setting in words; empty where the studio does not have the knob. */
  String words(int setting) {
    if (settings.settings().isEmpty()) {
      return "";
    }
    DialledSetting dialled = settings.settings().get(setting);
    Dialling dialling = dialled.dialling();
    Double share = dialled.share();
    if (dialling == null || share == null) {
      return "";
    }
    double least = Math.max(0, share - dialling.knob().toleranceShare());
    double most = Math.min(1, share + dialling.knob().toleranceShare());
    String words =
        "±"
            + Reading.entered(dialling.knob().toleranceDegrees())
            + "° is "
            + dialling.words(dialling.value(least))
            + " to "
            + dialling.words(dialling.value(most));
    boolean touchy = isOther(dialled, dialling, least) || isOther(dialled, dialling, most);
    return touchy ? words + "; touchy: go by ear" : words;
  }

  private boolean isOther(DialledSetting dialled, Dialling dialling, double share) {
    String pointer = dialled.setting().forValue();
    if (exact == null || pointer == null || dialled.tied() == null) {
      return false;
    }
    try {
      return SoundValue.at(settings.recipe(), pointer, dialling.knob().dimension())
          .map(value -> value.with(dialling.value(share)))
          .flatMap(turned -> Resolution.of(turned, studio).complete())
          .map(sound -> isOther(exact, Predictor.predict(sound).metrics()))
          .orElse(false);
    } catch (IllegalArgumentException beyondTheModel) {
      return false;
    }
  }

  private static boolean isOther(Metrics exact, Metrics there) {
    double louder =
        there.get(Metric.PEAK_DB).orElseThrow() - exact.get(Metric.PEAK_DB).orElseThrow();
    return Math.abs(louder) > ALIKE_DECIBELS
        || differs(exact.get(Metric.HOLD), there.get(Metric.HOLD))
        || differs(exact.get(Metric.RELEASE_40), there.get(Metric.RELEASE_40));
  }

  private static boolean differs(OptionalDouble exact, OptionalDouble there) {
    return exact.isPresent() != there.isPresent()
        || (exact.isPresent()
            && Math.abs(there.getAsDouble() - exact.getAsDouble())
                > ALIKE_SHARE * exact.getAsDouble());
  }
}
