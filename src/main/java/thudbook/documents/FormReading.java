package thudbook.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.FormTree;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.YamlTree;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;

/** Reads of the form of a recipe what is kept, or only its sound, to be tried out. */
final class FormReading {
  /** A channel as YAML, in place of one of a gate. */
  private static final Pattern TRIED = Pattern.compile("stages\\.([0-9]{1,3})\\.tried");

  private static final Pattern SOUND =
      Pattern.compile("(source|envelope|strikes|stages|output)\\..*");

  /** What is tried out is not kept, so it needs no name of its own. */
  private static final Identity NOT_KEPT =
      new Identity() {
        @Override
        public UUID newId() {
          return new UUID(0, 0);
        }

        @Override
        public String slugFor(String title) {
          return "experiment";
        }
      };

  private final Faults faults = new Faults();
  private final Map<String, List<String>> form = new LinkedHashMap<>();

  private FormReading() {}

  /** The fields of a recipe that is kept: a channel that is tried out is not. */
  static Map<String, List<String>> kept(Map<String, List<String>> given, Faults faults) {
    Map<String, List<String>> form = new LinkedHashMap<>();
    given.forEach(
        (name, values) -> {
          if (!TRIED.matcher(name).matches()) {
            form.put(name, values);
          } else if (!text(values).isBlank()) {
            faults.say(
                place(name),
                "channel-not-kept",
                "a channel that is tried out",
                "a channel of a gate",
                "a channel that is tried out isn't kept in a recipe: save it in a gate first and"
                    + " choose it there, or clear this field");
          }
        });
    return form;
  }

  static Experiment experiment(Map<String, List<String>> given) {
    FormReading reading = new FormReading();
    List<Gate> gates = new ArrayList<>();
    given.forEach(
        (name, values) -> {
          if (SOUND.matcher(name).matches()) {
            reading.form.put(name, values);
          }
        });
    given.forEach(
        (name, values) -> {
          Matcher tried = TRIED.matcher(name);
          reading.form.remove(tried.matches() ? name : "");
          if (tried.matches() && !text(values).isBlank()) {
            Gate gate = reading.gate(place(name), text(values), gates.size());
            if (gate != null) {
              String stage = "stages." + tried.group(1);
              reading.form.put(stage + ".gate", List.of(gate.id().toString()));
              reading.form.put(
                  stage + ".channel", List.of(gate.channels().get(0).channel().name()));
              gates.add(gate);
            }
          }
        });
    reading.form.put("title", List.of("Experiment"));
    return new Experiment(reading.read(NOT_KEPT), gates);
  }

  private Recipe read(Identity identity) {
    Fields fields = Fields.of(FormTree.of(form), faults);
    String notes = Notes.read(fields, faults);
    return Documents.RECIPE.certain(fields, notes, identity, faults).thing();
  }

  /** A gate of one channel, which only this reading knows. */
  private @Nullable Gate gate(Place place, String yaml, int number) {
    try {
      Fields fields = Fields.of(YamlTree.read(yaml, place).tree(), faults);
      String name = fields.line("name", Limits.NAME);
      StudioChannel channel = ChannelPart.read(name == null ? "tried out" : name, fields, faults);
      fields.get("measured");
      fields.done();
      return channel == null
          ? null
          : new Gate(
              new UUID(0, number + 1L),
              "tried-out-" + (number + 1),
              "Tried out",
              Gate.Caution.NONE,
              List.of(channel),
              "");
    } catch (Refusal refusal) {
      faults.addAll(refusal);
      return null;
    }
  }

  private static Place place(String name) {
    return new Place(1, "/" + name.replace('.', '/'));
  }

  private static String text(List<String> values) {
    return values.isEmpty() ? "" : values.get(0);
  }
}
