package thudbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import thudbook.changes.Kept;
import thudbook.changes.Thing;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.sessions.Session;

/** The sample library, read and predicted. */
public final class Samples {
  /** The half-written recipes by file name, with words for what each one's document leaves out. */
  public static final Map<String, List<String>> HALF_WRITTEN =
      Map.of(
          "gull-rattle.md", List.of("no channel of the gate slow-tide"),
          "keepers-glass.md", List.of("index", "decay"),
          "parcel-from-the-boat.md", List.of("no gate channel"));

  static final Path FOLDER = Path.of("sample-library");

  /** Samples bring their own names. */
  static final Identity NONE_MISSING =
      new Identity() {
        @Override
        public UUID newId() {
          throw new AssertionError("a sample has no id");
        }

        @Override
        public String slugFor(String title) {
          throw new AssertionError("a sample has no slug: " + title);
        }
      };

  final List<Module> modules = new ArrayList<>();
  final Map<String, Gate> gates = new TreeMap<>();
  final Map<String, Recipe> recipes = new TreeMap<>();
  final Map<String, Session> sessions = new TreeMap<>();
  final Map<String, Sound> sounds = new TreeMap<>();
  final Map<String, Prediction> predictions = new TreeMap<>();

  /** The gates of the samples, as a studio. */
  final Things<Gate> studio =
      new Things<Gate>() {
        @Override
        public Optional<Kept<Gate>> find(String slugOrId) {
          return Optional.ofNullable(gates.get(slugOrId))
              .map(gate -> Kept.fresh(gate, Documents.write(gate)));
        }

        @Override
        public List<Kept<Gate>> all() {
          return gates.keySet().stream().map(slug -> find(slug).orElseThrow()).toList();
        }
      };

  static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.walk(FOLDER)) {
      return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
    }
  }

  Samples() throws IOException {
    for (Path file : files()) {
      Thing noun = read(Files.readAllBytes(file)).thing();
      if (noun instanceof Gate gate) {
        gates.put(gate.slug(), gate);
      } else if (noun instanceof Module module) {
        modules.add(module);
      } else if (noun instanceof Recipe recipe) {
        recipes.put(recipe.slug(), recipe);
      } else if (noun instanceof Session session) {
        sessions.put(session.slug(), session);
      }
    }
    recipes.forEach(
        (slug, recipe) ->
            Resolution.of(recipe, studio)
                .complete()
                .ifPresent(
                    sound -> {
                      sounds.put(slug, sound);
                      predictions.put(slug, Predictor.predictWithCurve(sound));
                    }));
  }

  static Documents.Read<?> read(byte[] text) {
    return Documents.read(text, NONE_MISSING);
  }

  /** The stages of all complete samples. */
  List<Stage> stages() {
    return sounds.values().stream().flatMap(sound -> sound.stages().stream()).toList();
  }
}
