package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Dialling;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.patching.Cabling;
import thudbook.patching.CablingFault;
import thudbook.patching.DialledSetting;
import thudbook.patching.DialledSettings;
import thudbook.patching.KnobTolerance;
import thudbook.patching.Tolerance;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.wording.Cautions;
import thudbook.wording.MetricWords;
import thudbook.wording.MovedNumbers;
import thudbook.wording.PositionWords;
import thudbook.wording.Reading;

/**
 * Connections and settings of a recipe on the modules of the studio.
 *
 * @param known whether the studio has modules to look anything up in
 * @param connections in signal order
 * @param faults what is wrong with connections and settings, a sentence each
 * @param warnings what may be meant
 * @param touchy on which knob the recipe is touchy, in a sentence; empty: that was not asked
 * @param askTouchy whether it can be asked: turning every knob takes a moment
 * @param rounding what dialling to readable positions changes, in a sentence; empty: nothing told
 * @param warmUps modules that have to be on for a while first, in words
 */
public record PatchSheet(
    boolean known,
    List<Cable> connections,
    List<Line> settings,
    List<String> faults,
    List<String> warnings,
    String touchy,
    boolean askTouchy,
    String rounding,
    List<String> warmUps,
    List<Cautions.Caution> cautions) {

  /**
   * A connection.
   *
   * @param number its place in the recipe, from 1
   */
  public record Cable(int number, String out, String in) {}

  /**
   * A setting.
   *
   * @param address of the module; null: the studio has none of that label
   * @param value what the knob says there; empty: it is a switch, or unknown
   * @param tolerance what it may come to when it is read back; empty: unknown
   * @param touchy whether the recipe is touchiest here
   */
  public record Line(
      String module,
      @Nullable String address,
      String control,
      String at,
      String value,
      String tolerance,
      String sets,
      boolean touchy) {}

  /**
   * Looks a recipe up in the studio.
   *
   * @param turned whether every knob is turned to see which one is touchy
   */
  static PatchSheet of(HeardRecipe heard, List<Knob> knobs, Rack rack, boolean turned) {
    Recipe recipe = heard.recipe();
    Listening listening = heard.listening();
    DialledSettings settings = DialledSettings.of(recipe, rack);
    Cabling cabling = Cabling.of(recipe, rack);
    boolean predicted = !settings.tied().isEmpty() && heard.sound().isPresent();
    KnobTolerance touchiest =
        turned && predicted ? Tolerance.touchiest(settings, listening.studio()).orElse(null) : null;
    String touchy = "";
    if (turned && predicted) {
      touchy = touchiest == null ? "Touchy on none of its knobs." : touchy(touchiest);
    }
    List<String> faults = new ArrayList<>();
    List<String> warnings = new ArrayList<>();
    for (CablingFault fault : cabling.faults()) {
      (fault.isWarning() ? warnings : faults).add(numbered(fault));
    }
    settings.problems().forEach(problem -> faults.add(problem.message()));
    Set<Module> used = used(recipe, rack);
    return new PatchSheet(
        !rack.isEmpty(),
        cabling.inSignalOrder().stream().map(i -> cable(i, recipe)).toList(),
        lines(knobs, settings, touchiest),
        faults,
        warnings,
        touchy,
        predicted && !turned,
        rounding(settings, heard),
        used.stream()
            .filter(m -> m.warmUpMinutes() != null && m.warmUpMinutes() > 0)
            .map(
                m ->
                    m.label()
                        + " "
                        + Reading.entered(Objects.requireNonNull(m.warmUpMinutes()), "min"))
            .toList(),
        used.stream().filter(m -> m.gate() == null).flatMap(m -> Cautions.of(m).stream()).toList());
  }

  /** What is wrong with the patch of a recipe, and what its tied knobs come to, a line each. */
  public static List<String> lines(Recipe recipe, Rack rack) {
    List<String> lines = new ArrayList<>();
    Cabling.of(recipe, rack).faults().forEach(fault -> lines.add(numbered(fault)));
    for (DialledSetting setting : DialledSettings.of(recipe, rack).settings()) {
      Dialling dialling = setting.dialling();
      DialledSetting.Problem problem = setting.problem();
      if (problem != null) {
        lines.add(problem.message());
      } else if (dialling != null && setting.tied() != null && setting.value().isPresent()) {
        lines.add(
            setting.name()
                + ": "
                + PositionWords.of(setting.setting().at())
                + " is "
                + Reading.shown(dialling.words(setting.value().get()))
                + setting
                    .toDial()
                    .map(at -> "; the sound’s value stands at " + PositionWords.of(at))
                    .orElse(""));
      }
    }
    return lines;
  }

  private static Cable cable(int index, Recipe recipe) {
    Recipe.Connection connection = recipe.connections().get(index);
    return new Cable(index + 1, connection.out(), connection.in());
  }

  private static String numbered(CablingFault fault) {
    String[] place = fault.place().split("\\.", -1);
    return place[0].equals("connections")
        ? "Connection " + (Integer.parseInt(place[1]) + 1) + ": " + fault.message()
        : fault.message().substring(0, 1).toUpperCase(Locale.ROOT) + fault.message().substring(1);
  }

  private static List<Line> lines(
      List<Knob> knobs, DialledSettings settings, @Nullable KnobTolerance touchiest) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < knobs.size(); i++) {
      Knob knob = knobs.get(i);
      DialledSetting dialled = i < settings.settings().size() ? settings.settings().get(i) : null;
      Module module = dialled == null ? null : dialled.module();
      lines.add(
          new Line(
              knob.module(),
              module == null ? null : "/equipment/" + module.slug(),
              knob.control(),
              knob.at(),
              dialled == null ? "" : value(dialled),
              dialled == null ? "" : tolerance(dialled),
              knob.sets(),
              touchiest != null && touchiest.knob().equals(dialled)));
    }
    return lines;
  }

  private static String value(DialledSetting dialled) {
    Dialling dialling = dialled.dialling();
    return dialling == null
        ? ""
        : dialled.value().map(dialling::words).map(Reading::shown).orElse("");
  }

  private static String tolerance(DialledSetting dialled) {
    Dialling dialling = dialled.dialling();
    Double share = dialled.share();
    if (dialling == null || share == null) {
      return "";
    }
    double half = dialling.knob().toleranceShare();
    String low = dialling.words(dialling.value(Math.max(0, share - half)));
    String high = dialling.words(dialling.value(Math.min(1, share + half)));
    return Reading.shown(low) + " to " + Reading.shown(high);
  }

  private static String touchy(KnobTolerance knob) {
    List<String> told = new ArrayList<>();
    if (knob.reaches().contains(Reach.SILENT) && knob.exact().reach() != Reach.SILENT) {
      told.add("the low-pass gate may stay silent");
    }
    for (Metric metric : List.of(Metric.PEAK_DB, Metric.HOLD, Metric.RELEASE_40)) {
      KnobTolerance.Span span = knob.spans().get(metric);
      if (span != null && MovedNumbers.isNoticed(metric, span.lowest(), span.highest())) {
        told.add(
            MetricWords.of(metric).name().toLowerCase(Locale.ROOT)
                + " goes from "
                + Reading.of(metric, OptionalDouble.of(span.lowest()))
                + " to "
                + Reading.of(metric, OptionalDouble.of(span.highest())));
      } else if (span != null && span.absentSomewhere() && knob.exact().get(metric).isPresent()) {
        told.add(MetricWords.of(metric).name().toLowerCase(Locale.ROOT) + " may be missing");
      }
    }
    Dialling dialling = Objects.requireNonNull(knob.knob().dialling());
    return "Touchy: "
        + knob.knob().name()
        + ". Within ±"
        + Reading.entered(dialling.knob().toleranceDegrees())
        + "° of "
        + PositionWords.of(knob.knob().setting().at())
        + ", "
        + String.join(", ", told)
        + ".";
  }

  private static String rounding(DialledSettings settings, HeardRecipe heard) {
    List<DialledSetting> tied = settings.tied();
    if (tied.isEmpty()) {
      return "";
    }
    Optional<Metrics> meant = heard.metrics();
    Optional<Metrics> rounded = heard.listening().hear(settings.asRounded()).metrics();
    if (meant.isEmpty() || rounded.isEmpty()) {
      return "";
    }
    List<String> moved = MovedNumbers.words(meant.get(), rounded.get());
    return moved.isEmpty()
        ? "Dialled to positions that can be read, it sounds as written."
        : "Dialled to positions that can be read, this moves: " + String.join(", ", moved) + ".";
  }

  private static Set<Module> used(Recipe recipe, Rack rack) {
    Set<Module> used = new LinkedHashSet<>();
    for (Recipe.Connection connection : recipe.connections()) {
      rack.moduleOf(connection.out()).ifPresent(used::add);
      rack.moduleOf(connection.in()).ifPresent(used::add);
    }
    recipe.settings().forEach(s -> rack.module(s.module()).ifPresent(used::add));
    return used;
  }

  /** The warm-ups in one line. */
  public String warmUpLine() {
    return warmUps.stream().collect(Collectors.joining(", "));
  }
}
