package thudbook.pages.sessions;

import java.util.List;
import thudbook.changes.Things;
import thudbook.equipment.Dialling;
import thudbook.equipment.Gate;
import thudbook.equipment.Rack;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.KnobTolerance;
import thudbook.patching.Tolerance;
import thudbook.recipes.Recipe;
import thudbook.wording.Reading;

/**
 * How exactly a knob is read back, for a recall sheet: the values at both ends of its tolerance,
 * and whether the sound at one of the ends is plainly another one. A sheet only warns, so that the
 * two ends are enough for it; everything between is looked at by {@link Tolerance}.
 */
final class DialTolerance {
  private final DialledSettings settings;
  private final List<KnobTolerance> tolerances;

  /** The tolerances of a recipe's knobs. */
  DialTolerance(Recipe recipe, Rack rack, Things<Gate> studio) {
    this.settings = DialledSettings.of(recipe, rack);
    this.tolerances = Tolerance.atEnds(settings, studio);
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
    boolean touchy = tolerances.stream().anyMatch(t -> t.isTouchy() && t.knob().equals(dialled));
    return touchy ? words + "; touchy: go by ear" : words;
  }
}
