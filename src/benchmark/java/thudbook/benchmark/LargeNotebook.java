package thudbook.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import thudbook.access.Hands;
import thudbook.changes.Changes;
import thudbook.changes.Thing;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;
import thudbook.storage.Database;
import thudbook.storage.Written;

/** A data folder with very many recipes: the samples over and over, each a recipe of its own. */
final class LargeNotebook {
  private static final int AT_ONCE = 500;
  private static final Path LIBRARY = Path.of("sample-library");

  private static final Identity NONE =
      new Identity() {
        @Override
        public UUID newId() {
          throw new IllegalStateException("every sample has an id");
        }

        @Override
        public String slugFor(String title) {
          throw new IllegalStateException("every sample has a slug");
        }
      };

  private LargeNotebook() {}

  /** Fills a new data folder; answers the slugs. */
  static List<String> fill(Path data, int count) throws IOException {
    List<Gate> gates = new ArrayList<>();
    for (String text : texts("gates")) {
      Gate gate = ((Gate) read(text));
      gates.add(gate);
    }
    List<String> samples = texts("recipes");
    List<String> slugs = new ArrayList<>();
    Clock clock = Clock.fixed(Instant.parse("2026-11-02T10:00:00Z"), ZoneOffset.UTC);
    try (Database database = Database.open(data)) {
      Changes acts = Written.acts(database, clock, () -> {});
      for (int from = 0; from < count; from += AT_ONCE) {
        List<Write<?>> some = new ArrayList<>();
        if (from == 0) {
          gates.forEach(gate -> some.add(Write.added(Documents.GATE, gate)));
        }
        for (int k = from; k < Math.min(count, from + AT_ONCE); k++) {
          Recipe copy = copy(samples.get(k % samples.size()), k);
          slugs.add(copy.slug());
          some.add(Write.added(Documents.RECIPE, copy));
        }
        acts.write(some, Hands.OWNER, "filled");
      }
    }
    return slugs;
  }

  private static Recipe copy(String sample, int number) {
    String text =
        sample
            .replaceFirst("(?m)^id: .*$", "id: " + new UUID(number + 1L, number + 1L))
            .replaceFirst("(?m)^slug: (.*)$", "slug: $1-" + number)
            .replaceFirst("(?m)^title: \"?(.*?)\"?$", "title: \"$1 " + number + "\"");
    var recipe = ((Recipe) read(text));
    return recipe;
  }

  /** Reads a sample. */
  static Thing read(String text) {
    return Documents.read(text.getBytes(StandardCharsets.UTF_8), NONE).thing();
  }

  private static List<String> texts(String noun) throws IOException {
    List<String> texts = new ArrayList<>();
    try (Stream<Path> files = Files.list(LIBRARY.resolve(noun))) {
      for (Path file : files.sorted().toList()) {
        texts.add(Files.readString(file));
      }
    }
    return texts;
  }
}
