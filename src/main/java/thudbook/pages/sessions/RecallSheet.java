package thudbook.pages.sessions;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.equipment.StudioChannel;
import thudbook.pages.frame.Notes;
import thudbook.pages.reading.Knob;
import thudbook.pages.reading.PhotoView;
import thudbook.pages.reading.RecipeSheet;
import thudbook.plots.ShapePlot;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.quantities.Position;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.wording.Cautions;
import thudbook.wording.Entry;
import thudbook.wording.MetricWords;
import thudbook.wording.ReadableNumbers;
import thudbook.wording.Reading;

/**
 * A recipe to be set up again, in the order of a safe recall. The same sheet is for paper and for a
 * phone at the rack.
 *
 * @param warmUps what has to be on beforehand, a sentence each
 * @param tune what is tuned by ear or with a tuner, a sentence each
 * @param strike how it is struck, a sentence each
 * @param figure the predicted shape; null: no prediction
 * @param numbers what to compare by ear and with a scope
 * @param missing what keeps it from being predicted
 * @param notes safe HTML
 * @param lastUsed when it was set up last; empty: never yet
 */
public record RecallSheet(
    Recipe recipe,
    long version,
    int revision,
    List<Cautions.Caution> cautions,
    List<String> warmUps,
    List<Cable> cables,
    List<Dial> switches,
    List<Dial> knobs,
    List<String> tune,
    List<String> strike,
    ShapePlot.@Nullable Figure figure,
    List<Entry> numbers,
    List<String> missing,
    List<Entry> onward,
    String notes,
    List<PhotoView> photos,
    SheetCode code,
    String lastUsed) {
  private static final Pattern TUNED =
      Pattern.compile("source\\.(carrier|modulator|frequency|from|to)");

  private static final List<Metric> COMPARED =
      List.of(
          Metric.PEAK_DB,
          Metric.ONSET,
          Metric.ATTACK,
          Metric.HOLD,
          Metric.RELEASE_20,
          Metric.RELEASE_40,
          Metric.FLAT_TIME,
          Metric.LET_GO,
          Metric.THUMP_PEAK,
          Metric.BRIGHTNESS_PEAK);

  /**
   * A connection to be made.
   *
   * @param name of the row, for its tick
   */
  public record Cable(String name, int number, String out, String in, boolean ticked) {}

  /**
   * A switch or knob to be set.
   *
   * @param name of the row, for its tick
   * @param at where it stands, as it is read on the panel
   * @param sets which value of the sound it sets, in words; empty: none
   * @param tolerance how exactly it is read back, and what depends on it; empty: not known
   * @param asSet where it was set instead; empty: nowhere else
   */
  public record Dial(
      String name,
      int number,
      String module,
      String control,
      String at,
      String sets,
      String tolerance,
      boolean ticked,
      String asSet) {}

  /** Joins a recipe with everything that its sheet shows. */
  static RecallSheet of(
      Kept<Recipe> stored,
      HeardRecipe heard,
      Rack rack,
      List<PhotoView> photos,
      SheetCode code,
      RecallMarks marks,
      String lastUsed) {
    Recipe recipe = heard.recipe();
    Resolution resolution = heard.resolution();
    // What is drawn comes first: of a lone strike it has the numbers as well.
    ShapePlot.Figure figure =
        heard.sound().map(it -> ShapePlot.ofOneStrike(it, heard.listening()::drawn)).orElse(null);
    Metrics metrics = heard.metrics().orElse(null);
    DialTolerance tolerance = new DialTolerance(recipe, rack, heard.listening().studio());
    List<Knob> told = RecipeSheet.knobs(heard);
    List<Module> modules = modules(recipe, rack);
    List<Cautions.Caution> cautions = new ArrayList<>(RecipeSheet.cautions(heard));
    cautions.addAll(ofTubes(modules, resolution.gates()));
    Map<String, Integer> seen = new HashMap<>();
    List<Cable> cables = new ArrayList<>();
    for (Recipe.Connection cable : recipe.connections()) {
      String name = unique("c:" + cable.out() + " > " + cable.in(), seen);
      cables.add(
          new Cable(
              name, cables.size() + 1, cable.out(), cable.in(), marks.ticked().contains(name)));
    }
    List<Dial> switches = new ArrayList<>();
    List<Dial> knobs = new ArrayList<>();
    List<String> tune = new ArrayList<>();
    for (int i = 0; i < recipe.settings().size(); i++) {
      Recipe.Setting setting = recipe.settings().get(i);
      Knob words = told.get(i);
      String name = unique(nameOf(setting), seen);
      List<Dial> into = setting.at() instanceof Position.Named ? switches : knobs;
      into.add(
          new Dial(
              name,
              into.size() + 1,
              words.module(),
              words.control(),
              words.at(),
              words.sets(),
              tolerance.words(i),
              marks.ticked().contains(name),
              marks.asSet().getOrDefault(name, "")));
      if (setting.forValue() != null && TUNED.matcher(setting.forValue()).matches()) {
        tune.add(words.module() + " " + words.control() + ": " + words.sets());
      }
    }
    return new RecallSheet(
        recipe,
        stored.version(),
        stored.revision(),
        cautions,
        warmUps(modules, resolution.gates()),
        cables,
        switches,
        knobs,
        tune,
        strike(recipe),
        figure,
        metrics == null ? List.of() : numbers(metrics),
        resolution.missing(),
        RecipeSheet.onward(recipe),
        Notes.html(recipe.notes()),
        photos.stream().filter(PhotoView::isHere).limit(1).toList(),
        code,
        lastUsed);
  }

  /** The name of a setting's row. */
  static String nameOf(Recipe.Setting setting) {
    return "s:" + setting.module() + " / " + setting.control();
  }

  /** A recipe may name a knob twice; each row has a name of its own. */
  static String unique(String name, Map<String, Integer> seen) {
    int times = seen.merge(name, 1, Integer::sum);
    return times == 1 ? name : name + " #" + times;
  }

  /** The modules that a recipe uses, in the order of the rack. */
  private static List<Module> modules(Recipe recipe, Rack rack) {
    Set<Module> used = new HashSet<>();
    for (Recipe.Connection cable : recipe.connections()) {
      rack.moduleOf(cable.out()).ifPresent(used::add);
      rack.moduleOf(cable.in()).ifPresent(used::add);
    }
    recipe.settings().forEach(setting -> rack.module(setting.module()).ifPresent(used::add));
    return rack.modules().stream().filter(used::contains).toList();
  }

  /** The tubes of modules whose gate has not said so already. */
  private static List<Cautions.Caution> ofTubes(List<Module> modules, List<Gate> gates) {
    List<Cautions.Caution> cautions = new ArrayList<>();
    for (Module module : modules) {
      boolean told =
          gates.stream()
              .anyMatch(
                  gate -> gate.caution() == Gate.Caution.TUBE && gate.slug().equals(module.gate()));
      if (module.caution() == Gate.Caution.TUBE && !told) {
        cautions.add(Cautions.ofTubes(module.label() + ", " + module.title()));
      }
    }
    return cautions;
  }

  private static List<String> warmUps(List<Module> modules, List<Gate> gates) {
    List<String> warmUps = new ArrayList<>();
    Set<String> told = new HashSet<>();
    for (Module module : modules) {
      Double minutes = module.warmUpMinutes();
      if (minutes != null && minutes > 0) {
        warmUps.add(
            module.label() + ", " + module.title() + ": " + Reading.entered(minutes, "min"));
        told.add(String.valueOf(module.gate()));
      }
    }
    for (Gate gate : gates) {
      if (told.contains(gate.slug())) {
        continue;
      }
      double longest = 0;
      for (StudioChannel channel : gate.channels()) {
        Measured measured = channel.measured();
        if (measured != null && measured.warmUpMinutes() != null) {
          longest = Math.max(longest, measured.warmUpMinutes());
        }
      }
      if (longest > 0) {
        warmUps.add(
            gate.title() + ": " + Reading.entered(longest, "min") + ", as when it was measured");
      }
    }
    return warmUps;
  }

  private static List<String> strike(Recipe recipe) {
    List<String> strike = new ArrayList<>();
    for (RecipeSheet.Block block : RecipeSheet.played(recipe)) {
      if (block.title().equals("Strikes")) {
        block.entries().forEach(entry -> strike.add(entry.name() + ": " + entry.value()));
      }
    }
    return strike;
  }

  private static List<Entry> numbers(Metrics metrics) {
    List<Entry> numbers = new ArrayList<>();
    for (Metric metric : COMPARED) {
      String value = Reading.of(metric, metrics.get(metric));
      if (!value.equals(ReadableNumbers.ABSENT)) {
        numbers.add(new Entry("", MetricWords.of(metric).name(), value));
      }
    }
    return numbers;
  }

  /** Whether there is anything to tick. */
  public boolean hasRows() {
    return !cables.isEmpty() || !switches.isEmpty() || !knobs.isEmpty();
  }
}
