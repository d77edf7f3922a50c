package thudbook.sessions;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/**
 * What a recipe needs for itself while it sounds. Gate channels follow from its stages. Oscillators
 * and envelope modules are those that the rack knows as such; of a module that it does not know,
 * what its settings are {@code for} decides: a pitch or index of the source, or a time of an
 * envelope.
 *
 * @param channels gate and channel, {@code keeper-twin quick}
 * @param oscillators labels of modules
 * @param envelopes labels of modules
 * @param inputs what feeds an input, by the input
 * @param positions where knobs and switches stand
 */
record Wants(
    Set<String> channels,
    Set<String> oscillators,
    Set<String> envelopes,
    Map<String, String> inputs,
    Map<Patch.Control, Position> positions) {
  private static final Pattern PITCH =
      Pattern.compile("source\\.(carrier|modulator|index|frequency|duty)(\\..*)?");
  private static final Pattern ENVELOPE_TIME =
      Pattern.compile(
          "(stages\\.[0-9]+\\.)?envelope\\.(attack|hold|decay|sustain|release|length)(\\..*)?");

  static Wants of(Recipe recipe, Rack rack) {
    Set<String> labels = labels(recipe, rack);
    Set<String> oscillators = new LinkedHashSet<>();
    Set<String> envelopes = new LinkedHashSet<>();
    for (String label : labels) {
      Module module = rack.module(label).orElse(null);
      boolean noise = recipe.source() instanceof SourceEntry.Noise;
      if (module == null
          ? !noise && sets(recipe, label, PITCH)
          : module.kind() == Module.Kind.OSCILLATOR) {
        oscillators.add(label);
      }
      if (module == null
          ? sets(recipe, label, ENVELOPE_TIME)
          : module.kind() == Module.Kind.ENVELOPE) {
        envelopes.add(label);
      }
    }
    Map<String, String> inputs = new LinkedHashMap<>();
    recipe.connections().forEach(cable -> inputs.putIfAbsent(cable.in(), cable.out()));
    return new Wants(
        channels(recipe), oscillators, envelopes, inputs, Patch.of(List.of(recipe)).positions());
  }

  /** A channel as gate and name; null while either is not written. */
  static @Nullable String channel(StageEntry stage) {
    return stage.gate() == null || stage.channel() == null
        ? null
        : stage.gate() + " " + stage.channel();
  }

  private static Set<String> channels(Recipe recipe) {
    Set<String> channels = new LinkedHashSet<>();
    for (StageEntry stage : recipe.stages()) {
      String channel = channel(stage);
      if (channel != null) {
        channels.add(channel);
      }
    }
    return channels;
  }

  /** Labels of the modules that a recipe names, in the order of its connections and settings. */
  static Set<String> labels(Recipe recipe, Rack rack) {
    List<String> written = new ArrayList<>();
    recipe.settings().forEach(setting -> written.add(setting.module()));
    Set<String> labels = new LinkedHashSet<>();
    for (Recipe.Connection cable : recipe.connections()) {
      labels.add(label(cable.out(), written, rack));
      labels.add(label(cable.in(), written, rack));
    }
    labels.addAll(written);
    return labels;
  }

  /**
   * The module of one end of a connection: the one that the rack has, else the longest label of a
   * setting that it begins with, or else its first word.
   */
  static String label(String end, Iterable<String> known, Rack rack) {
    Module module = rack.moduleOf(end).orElse(null);
    if (module != null) {
      return module.label();
    }
    String longest = "";
    for (String label : known) {
      if (label.length() > longest.length() && (end + " ").startsWith(label + " ")) {
        longest = label;
      }
    }
    int space = end.indexOf(' ');
    if (longest.isEmpty()) {
      return space < 0 ? end : end.substring(0, space);
    }
    return longest;
  }

  private static boolean sets(Recipe recipe, String label, Pattern value) {
    return recipe.settings().stream()
        .anyMatch(
            setting ->
                setting.module().equals(label)
                    && setting.forValue() != null
                    && value.matcher(setting.forValue()).matches());
  }
}
