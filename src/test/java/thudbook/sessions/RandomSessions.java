package thudbook.sessions;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.random.RandomGenerator;
import thudbook.envelopes.Drive;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;

/** Seeded sessions over a small rack, so that recipes share a good part of their patches. */
final class RandomSessions {
  private static final List<String> OUTPUTS =
      List.of("O1 sine", "O1 square", "O2 sine", "N1 white", "E1 out", "E2 out", "T1 trigger");
  private static final List<String> INPUTS =
      List.of("G1 in 1", "G1 in 2", "G2 in", "G1 control 1", "G2 control", "E1 trigger", "M1 in 1");
  private static final List<String> VALUES =
      List.of("source.carrier", "source.level", "envelope.decay", "envelope.peak");

  private final RandomGenerator random;

  /** The recipes of the latest session, by slug. */
  final Map<String, Recipe> recipes = new LinkedHashMap<>();

  RandomSessions(RandomGenerator random) {
    this.random = random;
  }

  Optional<Recipe> recipe(String slug) {
    return Optional.ofNullable(recipes.get(slug));
  }

  /** A session of so many recipes, with layers, fixed places and recipes that stay. */
  Session session(int count) {
    recipes.clear();
    List<Session.Entry> entries = new ArrayList<>();
    int layer = 0;
    for (int i = 0; i < count; i++) {
      String slug = "recipe-" + i;
      recipes.put(slug, recipe(slug, random));
      layer += random.nextInt(4) == 0 ? 0 : 1;
      boolean layered = random.nextInt(3) == 0;
      entries.add(
          new Session.Entry(
              slug,
              null,
              layered ? "layer " + layer : null,
              random.nextInt(5) == 0,
              random.nextInt(4) == 0));
    }
    return new Session(new UUID(1, 2), "a-day", "A day", null, null, whole(entries), "");
  }

  /** Entries of a layer that was left before sound alone. */
  private static List<Session.Entry> whole(List<Session.Entry> entries) {
    List<Session.Entry> whole = new ArrayList<>(entries);
    int torn = Session.tornLayer(whole);
    while (torn >= 0) {
      Session.Entry entry = whole.get(torn);
      whole.set(torn, new Session.Entry(entry.recipe(), null, null, entry.fixed(), entry.stays()));
      torn = Session.tornLayer(whole);
    }
    return whole;
  }

  static Recipe recipe(String slug, RandomGenerator random) {
    Set<Recipe.Connection> connections = new LinkedHashSet<>();
    for (int i = random.nextInt(7); i > 0; i--) {
      connections.add(new Recipe.Connection(one(OUTPUTS, random), one(INPUTS, random)));
    }
    Map<String, Recipe.Setting> settings = new LinkedHashMap<>();
    for (int i = random.nextInt(9); i > 0; i--) {
      String module = one(List.of("O1", "O2", "E1", "E2", "N1", "A1"), random);
      String control = "knob " + random.nextInt(3);
      Position at =
          random.nextInt(4) == 0
              ? new Position.Named("low")
              : new Position.Share(random.nextInt(3) / 2.0);
      String value = random.nextInt(3) == 0 ? one(VALUES, random) : null;
      settings.put(module + control, new Recipe.Setting(module, control, at, value));
    }
    List<StageEntry> stages =
        random.nextInt(3) == 0
            ? List.of()
            : List.of(new StageEntry("keeper", "c" + random.nextInt(3), Drive.UNITY, null));
    return recipe(slug, stages, List.copyOf(connections), List.copyOf(settings.values()));
  }

  static Recipe recipe(
      String slug,
      List<StageEntry> stages,
      List<Recipe.Connection> connections,
      List<Recipe.Setting> settings) {
    return new Recipe(
        UUID.nameUUIDFromBytes(slug.getBytes(StandardCharsets.UTF_8)),
        slug,
        slug,
        List.of(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        stages,
        null,
        connections,
        settings,
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        "");
  }

  private static <T> T one(List<T> of, RandomGenerator random) {
    return of.get(random.nextInt(of.size()));
  }
}
