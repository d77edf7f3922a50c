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
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.equipment.Gate;
import thudbook.recipes.Gates;
import thudbook.recipes.Recipes;
import thudbook.storage.Database;

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
    List<Gates.Written> gates = new ArrayList<>();
    for (String text : texts("gates")) {
      Gate gate = ((Documents.AGate) read(text)).gate();
      gates.add(new Gates.Written(gate, Documents.write(gate)));
    }
    List<String> samples = texts("recipes");
    List<String> slugs = new ArrayList<>();
    Clock clock = Clock.fixed(Instant.parse("2026-11-02T10:00:00Z"), ZoneOffset.UTC);
    try (Database database = Database.open(data)) {
      Recipes recipes =
          new Recipes(database.changes(), database.recipes(), database.gates(), clock, () -> {});
      for (int from = 0; from < count; from += AT_ONCE) {
        List<Recipes.Written> some = new ArrayList<>();
        for (int k = from; k < Math.min(count, from + AT_ONCE); k++) {
          Recipes.Written copy = copy(samples.get(k % samples.size()), k);
          slugs.add(copy.recipe().slug());
          some.add(copy);
        }
        recipes.add(from == 0 ? gates : List.of(), some, Author.OWNER, "filled");
      }
    }
    return slugs;
  }

  private static Recipes.Written copy(String sample, int number) {
    String text =
        sample
            .replaceFirst("(?m)^id: .*$", "id: " + new UUID(number + 1L, number + 1L))
            .replaceFirst("(?m)^slug: (.*)$", "slug: $1-" + number)
            .replaceFirst("(?m)^title: \"?(.*?)\"?$", "title: \"$1 " + number + "\"");
    var recipe = ((Documents.ARecipe) read(text)).recipe();
    return new Recipes.Written(recipe, Documents.write(recipe));
  }

  /** Reads a sample. */
  static Documents.Noun read(String text) {
    return Documents.read(text.getBytes(StandardCharsets.UTF_8), NONE).noun();
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
