package thudbook.patching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Control;
import thudbook.equipment.Dialling;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.patching.DialledSetting.Kind;
import thudbook.patching.DialledSetting.Problem;
import thudbook.quantities.Position;
import thudbook.quantities.Reading;
import thudbook.recipes.Recipe;

/**
 * The settings of a recipe on the knobs and switches of the studio.
 *
 * @param settings in the order of the recipe; none if the studio has no modules: then nothing is
 *     known about any of them
 */
public record DialledSettings(Recipe recipe, List<DialledSetting> settings) {
  public DialledSettings {
    settings = List.copyOf(settings);
  }

  /** Looks the settings of a recipe up in the studio. */
  public static DialledSettings of(Recipe recipe, Rack rack) {
    return new DialledSettings(
        recipe,
        rack.isEmpty()
            ? List.of()
            : recipe.settings().stream().map(s -> dialled(recipe, s, rack)).toList());
  }

  /** The knobs that set a value of the sound and reach it. */
  public List<DialledSetting> tied() {
    return settings.stream().filter(s -> s.wantedShare().isPresent()).toList();
  }

  /** What is wrong, in the order of the settings. */
  public List<Problem> problems() {
    return settings.stream().flatMap(s -> Optional.ofNullable(s.problem()).stream()).toList();
  }

  /** The share of the tied knobs whose position does not give the value of the sound, 0 to 1. */
  public double disagreeingShare() {
    List<DialledSetting> tied = tied();
    long disagreeing =
        tied.stream()
            .filter(s -> s.problem() != null && s.problem().kind() == Kind.DISAGREES)
            .count();
    return tied.isEmpty() ? 0 : (double) disagreeing / tied.size();
  }

  /**
   * The recipe as it sounds when every tied knob stands as written down: positions set the values.
   * What the sound can't have stays as it is.
   */
  public Recipe asDialled() {
    return replaced(DialledSetting::value);
  }

  /** The same, with the three digits that one reads off a knob: for a form, where it is typed. */
  public Recipe asRead() {
    return replaced(setting -> setting.value().map(Dialling::read));
  }

  /** The recipe with every tied knob where the value of its sound stands: values set positions. */
  public Recipe asSounding() {
    List<Recipe.Setting> anew = new ArrayList<>();
    for (int i = 0; i < recipe.settings().size(); i++) {
      Recipe.Setting setting = recipe.settings().get(i);
      Position at =
          i < settings.size()
              ? settings.get(i).toDial().map(Position.class::cast).orElse(null)
              : null;
      anew.add(
          at == null
              ? setting
              : new Recipe.Setting(setting.module(), setting.control(), at, setting.forValue()));
    }
    return recipe.withSettings(anew);
  }

  /** The recipe as it sounds when every tied knob is dialled as exactly as it can be read. */
  public Recipe asRounded() {
    return replaced(DialledSetting::rounded);
  }

  private Recipe replaced(Function<DialledSetting, Optional<Double>> value) {
    Recipe replaced = recipe;
    for (DialledSetting setting : settings) {
      Dialling dialling = setting.dialling();
      String pointer = setting.setting().forValue();
      Optional<Double> other = value.apply(setting);
      if (dialling == null || pointer == null || other.isEmpty()) {
        continue;
      }
      try {
        replaced =
            SoundValue.at(replaced, pointer, dialling.knob().dimension())
                .orElseThrow()
                .with(other.get());
      } catch (IllegalArgumentException beyondTheModel) {
        // A knob may go further than a sound can be described; then its value stays.
      }
    }
    return replaced;
  }

  private static DialledSetting dialled(Recipe recipe, Recipe.Setting setting, Rack rack) {
    Module module = rack.module(setting.module()).orElse(null);
    if (module == null) {
      return wrong(setting, null, Kind.NO_SUCH_MODULE, "there is no module " + setting.module());
    }
    Control control = module.control(setting.control()).orElse(null);
    if (control instanceof Control.Switch toggle) {
      return ofSwitch(recipe, setting, module, toggle);
    } else if (control instanceof Control.Knob knob) {
      return ofKnob(recipe, setting, module, knob);
    }
    String has =
        module.controls().isEmpty()
            ? "it has none"
            : "it has " + String.join(", ", module.controls().stream().map(Control::name).toList());
    return wrong(
        setting,
        module,
        Kind.NO_SUCH_CONTROL,
        module.label() + " has no control " + setting.control() + ", " + has);
  }

  private static DialledSetting ofSwitch(
      Recipe recipe, Recipe.Setting setting, Module module, Control.Switch toggle) {
    String at = setting.at().text();
    if (!toggle.positions().contains(at)) {
      return wrong(
          setting,
          module,
          Kind.NO_SUCH_POSITION,
          "it has no position " + at + ", only " + String.join(", ", toggle.positions()));
    }
    String pointer = setting.forValue();
    String word = pointer == null ? null : SoundWord.at(recipe, pointer).orElse(null);
    if (word != null && !word.equals(at)) {
      return wrong(
          setting, module, Kind.DISAGREES, "it stands at " + at + ", the sound has " + word);
    }
    return new DialledSetting(setting, module, null, null, null, null);
  }

  private static DialledSetting ofKnob(
      Recipe recipe, Recipe.Setting setting, Module module, Control.Knob knob) {
    String switched = knob.switchedBy();
    String at = switched == null ? null : switchPosition(recipe, module, switched);
    Dialling dialling = Dialling.of(knob, at).orElse(null);
    if (dialling == null) {
      return wrong(
          setting,
          module,
          Kind.SWITCH_NOT_SET,
          at == null
              ? "its range depends on " + switched + ", which no setting mentions"
              : "it has no range for " + switched + " at " + at);
    }
    SoundValue tied = null;
    Problem problem = null;
    String pointer = setting.forValue();
    if (pointer != null) {
      tied = SoundValue.at(recipe, pointer, knob.dimension()).orElse(null);
      problem = problemOfTie(setting, dialling, pointer, tied);
    }
    Double share = null;
    if (dialling.share(setting.at()) instanceof Reading.Value reading) {
      share = reading.si();
    } else if (dialling.share(setting.at()) instanceof Reading.Refused refused) {
      problem =
          problem(
              setting,
              Kind.NOT_ON_THE_KNOB,
              "it can't stand at " + setting.at().text() + ", expected " + refused.expected());
    }
    boolean comparable = tied != null && tied.dimension() == knob.dimension();
    DialledSetting dialled =
        new DialledSetting(setting, module, dialling, share, comparable ? tied : null, problem);
    return problem == null && comparable ? compared(dialled, dialling) : dialled;
  }

  private static @Nullable Problem problemOfTie(
      Recipe.Setting setting, Dialling dialling, String pointer, @Nullable SoundValue tied) {
    if (tied == null) {
      return problem(setting, Kind.NO_SUCH_VALUE, "the sound has no value " + pointer);
    }
    if (tied.dimension() != dialling.knob().dimension()) {
      return problem(
          setting,
          Kind.OTHER_UNIT,
          "it goes from " + dialling.rangeInWords() + ", which does not fit " + pointer);
    }
    if (tied.si() != null && dialling.shareOf(tied.si()) instanceof Reading.Refused refused) {
      return problem(
          setting,
          Kind.OUT_OF_REACH,
          "it does not reach " + dialling.words(tied.si()) + ", only " + refused.expected());
    }
    return null;
  }

  private static DialledSetting compared(DialledSetting dialled, Dialling dialling) {
    Double share = dialled.share();
    Optional<Double> wanted = dialled.wantedShare();
    if (share == null
        || wanted.isEmpty()
        || Math.abs(share - wanted.get()) <= dialling.knob().toleranceShare()) {
      return dialled;
    }
    String message =
        dialled.setting().at().text()
            + " is "
            + dialling.words(dialling.value(share))
            + ", the sound has "
            + dialling.words(dialled.wanted().orElseThrow())
            + ", which stands at "
            + dialled.toDial().orElseThrow().text();
    return new DialledSetting(
        dialled.setting(),
        dialled.module(),
        dialling,
        share,
        dialled.tied(),
        problem(dialled.setting(), Kind.DISAGREES, message));
  }

  private static @Nullable String switchPosition(Recipe recipe, Module module, String name) {
    for (Recipe.Setting other : recipe.settings()) {
      if (other.control().equals(name)
          && other.module().equalsIgnoreCase(module.label())
          && other.at() instanceof Position.Named named) {
        return named.name();
      }
    }
    return null;
  }

  private static DialledSetting wrong(
      Recipe.Setting setting, @Nullable Module module, Kind kind, String message) {
    return new DialledSetting(setting, module, null, null, null, problem(setting, kind, message));
  }

  private static Problem problem(Recipe.Setting setting, Kind kind, String message) {
    return new Problem(kind, setting.module() + " " + setting.control() + ": " + message);
  }
}
