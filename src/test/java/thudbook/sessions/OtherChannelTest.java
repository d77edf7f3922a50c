package thudbook.sessions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import thudbook.changes.Kept;
import thudbook.changes.Thing;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.equipment.Rack;
import thudbook.equipment.StudioChannel;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.StageEntry;

/**
 * Other channels for recipes that clash, over all pairs of sample recipes. Property tests: what is
 * proposed is near, and what is not proposed isn't.
 */
class OtherChannelTest {
  private static final Identity SLUG_IS_THERE =
      new Identity() {
        @Override
        public UUID newId() {
          return new UUID(0, 0);
        }

        @Override
        public String slugFor(String title) {
          throw new AssertionError(title);
        }
      };

  private final Map<String, Gate> gates = new TreeMap<>();
  private final Map<String, Recipe> recipes = new TreeMap<>();
  private final Things<Gate> studio =
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

  OtherChannelTest() throws IOException {
    for (String folder : List.of("gates", "recipes")) {
      try (Stream<Path> files = Files.list(Path.of("sample-library", folder))) {
        files.sorted().forEach(this::read);
      }
    }
  }

  private void read(Path file) {
    try {
      Thing noun = Documents.read(Files.readAllBytes(file), SLUG_IS_THERE).thing();
      if (noun instanceof Gate gate) {
        gates.put(gate.slug(), gate);
      } else if (noun instanceof Recipe recipe) {
        recipes.put(recipe.slug(), recipe);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Session layer(String... slugs) {
    List<Session.Entry> entries =
        Stream.of(slugs)
            .map(slug -> new Session.Entry(slug, null, "together", false, false))
            .toList();
    return new Session(new UUID(1, 1), "s", "S", null, null, entries, "");
  }

  private Optional<Prediction> predicted(Recipe recipe) {
    return Resolution.of(recipe, studio).complete().map(Predictor::predict);
  }

  private Recipe through(Recipe recipe, int stage, String gate, String channel) {
    List<StageEntry> stages = new ArrayList<>(recipe.stages());
    StageEntry was = stages.get(stage);
    stages.set(stage, new StageEntry(gate, channel, was.drive(), was.envelope()));
    return new Recipe(
        recipe.id(),
        recipe.slug(),
        recipe.title(),
        List.of(),
        null,
        null,
        null,
        null,
        null,
        recipe.source(),
        recipe.envelope(),
        recipe.strikes(),
        stages,
        recipe.couplingHertz(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        "");
  }

  private static boolean near(OptionalDouble now, OptionalDouble there) {
    return now.isPresent() == there.isPresent()
        && (now.isEmpty()
            || Math.abs(there.getAsDouble() - now.getAsDouble()) <= 0.15 * now.getAsDouble());
  }

  /** Whether a recipe through a channel sounds as the issue asks, from predictions of its own. */
  private boolean near(Prediction now, Prediction there) {
    double louder =
        there.metrics().get(Metric.PEAK_DB).orElseThrow()
            - now.metrics().get(Metric.PEAK_DB).orElseThrow();
    return near(now.metrics().get(Metric.HOLD), there.metrics().get(Metric.HOLD))
        && near(now.metrics().get(Metric.RELEASE_40), there.metrics().get(Metric.RELEASE_40))
        && Math.abs(louder) <= 1.5;
  }

  @Test
  void ofEveryPairThatClashesExactlyTheNearChannelsThatAreFreeAreProposed() {
    int proposals = 0;
    int clashes = 0;
    for (String one : recipes.keySet()) {
      for (String other : recipes.keySet()) {
        if (one.compareTo(other) >= 0) {
          continue;
        }
        Plan plan = Plan.of(layer(one, other), slug -> Optional.of(recipes.get(slug)), Rack.EMPTY);
        for (Plan.Clash clash : plan.clashes()) {
          Set<String> found = new HashSet<>();
          OtherChannel.resolving(clash, plan, new Listening(studio))
              .forEach(c -> found.add(c.entry() + " " + c.stage() + c.gate() + c.channel()));
          if (clash.conflict().kind() == Conflict.Kind.CHANNEL) {
            clashes++;
            assertThat(found).isEqualTo(expected(clash, recipes.get(one), recipes.get(other)));
          } else {
            assertThat(found).isEmpty();
          }
          proposals += found.size();
        }
      }
    }
    assertThat(clashes).isGreaterThan(50);
    assertThat(proposals).isGreaterThan(0);
  }

  private Set<String> expected(Plan.Clash clash, Recipe one, Recipe other) {
    Set<String> expected = new HashSet<>();
    Set<String> taken = new HashSet<>();
    Stream.of(one, other)
        .flatMap(r -> r.stages().stream())
        .forEach(s -> taken.add(s.gate() + " " + s.channel()));
    List<Recipe> both = List.of(one, other);
    for (int entry = 0; entry < 2; entry++) {
      Recipe recipe = both.get(entry);
      Optional<Prediction> now = predicted(recipe);
      for (int stage = 0; now.isPresent() && stage < recipe.stages().size(); stage++) {
        StageEntry was = recipe.stages().get(stage);
        if (!clash.conflict().what().equals(was.gate() + " " + was.channel())) {
          continue;
        }
        for (Gate gate : gates.values()) {
          for (StudioChannel channel : gate.channels()) {
            String name = channel.channel().name();
            if (!taken.contains(gate.slug() + " " + name)
                && near(
                    now.get(),
                    predicted(through(recipe, stage, gate.slug(), name)).orElseThrow())) {
              expected.add(entry + " " + stage + gate.slug() + name);
            }
          }
        }
      }
    }
    return expected;
  }
}
