package thudbook.patching;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Dialling;
import thudbook.equipment.Module;
import thudbook.quantities.Position;
import thudbook.quantities.Reading;
import thudbook.recipes.Recipe;

/**
 * A setting of a recipe on the knob or switch that it names.
 *
 * @param module null: the studio has no module of that label
 * @param dialling the knob; null: it is a switch, or there is no such control
 * @param share where the knob stands, as a share of its sweep; null: not on the knob
 * @param tied the value of the sound that the knob sets; null: none, or a word
 * @param problem what is wrong; null: nothing
 */
public record DialledSetting(
    Recipe.Setting setting,
    @Nullable Module module,
    @Nullable Dialling dialling,
    @Nullable Double share,
    @Nullable SoundValue tied,
    @Nullable Problem problem) {

  /** The value at the position that is written down, in the SI unit of the knob. */
  public Optional<Double> value() {
    return dialling == null || share == null
        ? Optional.empty()
        : Optional.of(dialling.value(share));
  }

  /** The value that the sound has there, in the SI unit of the knob. */
  public Optional<Double> wanted() {
    return tied == null ? Optional.empty() : Optional.ofNullable(tied.si());
  }

  /** The share of the sweep at which the value of the sound stands, if the knob reaches it. */
  public Optional<Double> wantedShare() {
    if (dialling == null || wanted().isEmpty()) {
      return Optional.empty();
    }
    return dialling.shareOf(wanted().get()) instanceof Reading.Value reached
        ? Optional.of(reached.si())
        : Optional.empty();
  }

  /** The position to dial for the value of the sound, as exactly as the knob can be read. */
  public Optional<Position.Clock> toDial() {
    return dialling == null ? Optional.empty() : wantedShare().map(dialling::readable);
  }

  /** The value at {@link #toDial}: what the value of the sound is rounded to. */
  public Optional<Double> rounded() {
    Dialling on = dialling;
    return on == null
        ? Optional.empty()
        : toDial().flatMap(on.knob().sweep()::share).map(on::value);
  }

  /** The name of the control with its module: {@code E1 decay}. */
  public String name() {
    return setting.module() + " " + setting.control();
  }

  /**
   * What is wrong with a setting.
   *
   * @param message in one sentence, with the name of the control
   */
  public record Problem(Kind kind, String message) {}

  /** The kinds of what can be wrong with a setting. */
  public enum Kind {
    NO_SUCH_MODULE,
    NO_SUCH_CONTROL,
    /** The switch has no such position. */
    NO_SUCH_POSITION,
    /** The position is not on the knob. */
    NOT_ON_THE_KNOB,
    /** The range of the knob depends on a switch, and the recipe does not say where that stands. */
    SWITCH_NOT_SET,
    /** The sound has no such value. */
    NO_SUCH_VALUE,
    /** The knob is marked in another unit than the value has. */
    OTHER_UNIT,
    /** The knob does not reach the value of the sound. */
    OUT_OF_REACH,
    /** Position and value differ by more than the knob can be read back to. */
    DISAGREES
  }
}
