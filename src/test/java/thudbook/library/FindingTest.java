package thudbook.library;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.documents.Documents;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.predictions.Metric;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.storage.Database;
import thudbook.storage.Written;
import thudbook.yardstick.RandomLibrary;

/** Property: likeness as it is stated, tags of many recipes, shelves, and what people may type. */
class FindingTest {
  private static final int RECIPES = 600;
  private static final Instant NOON = Instant.parse("2026-11-02T12:00:00Z");

  @TempDir static Path folder;
  private static Database database;
  private static RandomLibrary made;
  private static Keeper<Recipe> recipes;
  private static Tagging tagging;
  private static Changes changes;

  @BeforeAll
  static void fill() {
    database = Database.open(folder);
    made = new RandomLibrary(9, 400);
    made.fill(database, RECIPES);
    recipes = Written.acts(database, () -> NOON, () -> {}).keeper(Documents.RECIPE);
    tagging = new Tagging(database.library(), recipes);
    changes = Written.acts(database, () -> NOON, () -> {});
  }

  @AfterAll
  static void close() {
    database.close();
  }

  // Likeness
  // ---------------------------------------------------------------------------------------

  @Test
  void theNearestAreThoseOfTheStatedDistance() {
    List<RecipeList.Row> rows = new ArrayList<>();
    // Gates have keys among those of recipes.
    for (int from = 1; from <= RECIPES + made.gates().size(); from += 200) {
      rows.addAll(
          database
              .library()
              .list()
              .rows(IntStream.range(from, from + 200).boxed().toList(), Hands.OWNER));
    }
    assertThat(rows).hasSize(RECIPES);
    Random random = new Random(1);
    int compared = 0;
    for (int i = 0; i < 60; i++) {
      RecipeList.Row one = rows.get(random.nextInt(rows.size()));
      List<Alike.Neighbour> nearest =
          database.library().alike().nearest(one.key(), Likeness.SHAPE, 25);
      if (one.shape() == null) {
        assertThat(nearest).isEmpty();
        continue;
      }
      compared++;
      List<Double> expected =
          rows.stream()
              .filter(row -> row.shape() != null && row.key() != one.key())
              .map(row -> shapeDistance(one, row))
              .sorted()
              .limit(25)
              .toList();
      assertThat(nearest).hasSize(25);
      for (int k = 0; k < 25; k++) {
        Alike.Neighbour neighbour = nearest.get(k);
        assertThat(neighbour.distance()).isCloseTo(expected.get(k), within(1e-9));
        RecipeList.Row row =
            rows.stream().filter(it -> it.key() == neighbour.key()).findFirst().orElseThrow();
        assertThat(neighbour.distance()).isCloseTo(shapeDistance(one, row), within(1e-9));
      }
      assertThat(nearest)
          .isSortedAccordingTo(
              Comparator.comparingDouble(Alike.Neighbour::distance)
                  .thenComparingInt(Alike.Neighbour::key));
      double both =
          database.library().alike().distance(one.key(), nearest.get(3).key(), Likeness.BOTH);
      double settings =
          database.library().alike().distance(one.key(), nearest.get(3).key(), Likeness.SETTINGS);
      assertThat(both).isCloseTo(Math.hypot(nearest.get(3).distance(), settings), within(1e-9));
    }
    assertThat(compared).isGreaterThan(40);
  }

  /** As the Javadoc of Likeness says, from the levels that the list shows. */
  private static double shapeDistance(RecipeList.Row one, RecipeList.Row other) {
    double sum = 0;
    for (int i = 0; i < 48; i++) {
      double difference =
          Math.round(100 * Objects.requireNonNull(one.shape()).levelsDb().get(i)) / 100.0
              - Math.round(100 * Objects.requireNonNull(other.shape()).levelsDb().get(i)) / 100.0;
      sum += difference * difference / 48;
    }
    double octaves =
        Math.log(
                one.metrics().get(Metric.BRIGHTNESS_PEAK).orElseThrow()
                    / other.metrics().get(Metric.BRIGHTNESS_PEAK).orElseThrow())
            / Math.log(2);
    return Math.sqrt(sum + 36 * octaves * octaves);
  }

  @Test
  void distancesOfSettingsAreThoseThatAreStated() {
    // Worked by hand from the Javadoc of Likeness.
    Alike alike = new Alike(catalogue());
    assertThat(alike.distance(1, 2, Likeness.SETTINGS)).as("nothing").isCloseTo(0, within(1e-12));
    assertThat(alike.distance(1, 3, Likeness.SETTINGS))
        .as("an octave of carrier, 6 dB, and half the decay, 6 dB")
        .isCloseTo(Math.sqrt(36 + 36), within(1e-9));
    assertThat(alike.distance(1, 4, Likeness.SETTINGS))
        .as("other source 12 dB, other channel 3 dB, no carrier 6 dB, no index 6 dB")
        .isCloseTo(Math.sqrt(144 + 9 + 36 + 36), within(1e-9));
    assertThat(alike.distance(1, 5, Likeness.SETTINGS))
        .as("1.5 V, 9 dB, and 1 + index doubled, 6 dB")
        .isCloseTo(Math.sqrt(81 + 36), within(1e-9));
  }

  private static Catalogue catalogue() {
    Catalogue catalogue = new Catalogue();
    catalogue.replace(
        List.of(),
        List.of(
            row(1, "fm", "quick", 100.0, 0.2, 7.0, 1.0),
            row(2, "fm", "quick", 100.0, 0.2, 7.0, 1.0),
            row(3, "fm", "quick", 200.0, 0.1, 7.0, 1.0),
            row(4, "noise", "long", null, 0.2, 7.0, null),
            row(5, "fm", "quick", 100.0, 0.2, 5.5, 3.0)));
    return catalogue;
  }

  private static CatalogueRow row(
      int key,
      String source,
      String channel,
      Double carrier,
      double decay,
      double peak,
      Double index) {
    CatalogueRow row = new CatalogueRow().begin(key, "t", 0);
    row.value(Facet.SOURCE, source, source);
    row.channel(new ChannelName("keeper-twin", channel));
    row.number(Quantity.DECAY, decay);
    row.number(Quantity.PEAK, peak);
    if (carrier != null) {
      row.number(Quantity.CARRIER, carrier);
    }
    if (index != null) {
      row.number(Quantity.INDEX, index);
    }
    return row;
  }

  // Tags
  // -------------------------------------------------------------------------------------------

  private static int having(String tag) {
    return database
        .library()
        .search()
        .all(Wanted.ALL.choosing(Facet.TAG, Words.fold(tag)), Hands.OWNER)
        .size();
  }

  @Test
  void aTagIsRenamedMergedAndDeletedInOneActThatCanBeUndone() {
    String one = made.tags().get(0);
    String other = made.tags().get(1);
    int ones = having(one);
    int others = having(other);
    assertThat(ones).isPositive();
    long renamed = tagging.rename(one, "Storm Lamp", Hands.OWNER).orElseThrow();
    assertThat(having(one)).isZero();
    assertThat(having("storm lamp")).isEqualTo(ones);
    assertThat(changes.find(renamed).orElseThrow().what())
        .isEqualTo("renamed the tag " + one + " to Storm Lamp on " + ones + " recipes");
    long merged = tagging.rename("storm lamp", other, Hands.OWNER).orElseThrow();
    assertThat(having("storm lamp")).isZero();
    assertThat(having(other)).isBetween(Math.max(ones, others), ones + others);
    long deleted = tagging.delete(other, Hands.OWNER).orElseThrow();
    assertThat(having(other)).isZero();
    assertThat(tagging.delete(other, Hands.OWNER)).isEmpty();
    changes.undo(deleted, Hands.OWNER);
    changes.undo(merged, Hands.OWNER);
    changes.undo(renamed, Hands.OWNER);
    assertThat(having(one)).isEqualTo(ones);
    assertThat(having(other)).isEqualTo(others);
    assertThat(Database.verify(folder).wrong()).isEmpty();
  }

  @Test
  void onlyTheSpellingOfATagCanBeChanged() {
    String tag = made.tags().get(2);
    int count = having(tag);
    String spelt = tag.toUpperCase(Locale.ROOT);
    long change = tagging.rename(tag, spelt, Hands.OWNER).orElseThrow();
    assertThat(having(tag)).isEqualTo(count);
    assertThat(database.library().catalogue().labels(Facet.TAG)).containsValue(spelt);
    changes.undo(change, Hands.OWNER);
  }

  @Test
  void tooManyTagsAndUnfitOnesAreRefusedWhole() {
    Recipe recipe = database.recipes().find("r7").orElseThrow().thing();
    List<String> many = new ArrayList<>();
    for (int i = 0; i < 33; i++) {
      many.add("number " + i);
    }
    List<UUID> ids = List.of(recipe.id(), new UUID(1, 1));
    assertThatThrownBy(() -> tagging.tag(ids, many, List.of(), Hands.OWNER))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal ->
                assertThat(refusal.faults())
                    .extracting(fault -> fault.code())
                    .containsExactly("too-many-tags", "not-there"));
    assertThatThrownBy(() -> tagging.rename("kick", " ", Hands.OWNER)).isInstanceOf(Refusal.class);
    assertThatThrownBy(() -> tagging.rename("kick", "x".repeat(41), Hands.OWNER))
        .isInstanceOf(Refusal.class);
    assertThat(database.recipes().find("r7").orElseThrow().thing()).isEqualTo(recipe);
  }

  // Shelves
  // ----------------------------------------------------------------------------------------

  @Test
  void shelvesHaveNamesOfTheirOwn() {
    ShelfStore shelves = database.shelves();
    ShelfStore.Shelf dry = shelves.add(" Dry kicks ", "q=kick&tag=dry", Hands.OWNER, NOON);
    assertThat(shelves.find(dry.id())).contains(dry);
    assertThat(dry.name()).isEqualTo("Dry kicks");
    assertThatThrownBy(() -> shelves.add("DRY KICKS", "q=x", Hands.OWNER, NOON))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.CONFLICT));
    assertThatThrownBy(() -> shelves.add(" ", "q=x", Hands.OWNER, NOON))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.REFUSED_VALUES));
    assertThatThrownBy(() -> shelves.change(99, "x", ""))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.NOT_FOUND));
    ShelfStore.Shelf again = shelves.change(dry.id(), "Dry Kicks", "tag=dry");
    assertThat(shelves.all()).containsExactly(again);
    assertThat(shelves.remove(dry.id())).isTrue();
    assertThat(shelves.remove(dry.id())).isFalse();
    assertThat(shelves.all()).isEmpty();
  }

  // What people may type
  // ---------------------------------------------------------------------------

  @Test
  void everyStringFindsSomethingOrSaysWhy() {
    List<String> typed =
        new ArrayList<>(
            List.of(
                "\"",
                "'",
                "-\"",
                "NEAR(a b, 2)",
                "a AND NOT b",
                "title:ka",
                "{title} : ka",
                "ka*",
                "^ka",
                "(ka",
                "ka)",
                "\u0000ka",
                "🥁 ka",
                "שלום",
                "\u202Eka",
                "ka\uD800",
                "_%",
                "\\",
                "; DROP TABLE recipe",
                "ré üm ŋa",
                "\uE000",
                "ka \uE000 lo"));
    Random random = new Random(3);
    for (int i = 0; i < 500; i++) {
      byte[] bytes = new byte[1 + random.nextInt(60)];
      random.nextBytes(bytes);
      typed.add(new String(bytes, StandardCharsets.ISO_8859_1));
    }
    typed.add("ka ".repeat(3_333));
    typed.add("x".repeat(10_000));
    for (String text : typed) {
      SearchAddress address = new SearchAddress(text, Wanted.ALL, null);
      Typed read = address.wanted(database.library()::vocabulary);
      Library.Page page =
          database
              .library()
              .page(read.wanted(), address.ordering(read.wanted()), Hands.OWNER, 20, null);
      assertThat(page.rows().size()).as(text).isEqualTo(Math.min(20, page.found().total()));
      database.library().search().counts(read.wanted(), Hands.OWNER, List.of(Quantity.HOLD));
      assertThat(SearchAddress.ofQuery(address.query()).address().query())
          .isEqualTo(address.query());
    }
  }

  @Test
  void accentsAndCaseAreFoldedAndWordsMayBeBegun() {
    Map<String, String> same = Map.of("ŐÖ", "oo", "ﬁn", "fin", "É", "e", "Ⅳ", "iv");
    same.forEach((text, folded) -> assertThat(Words.fold(text)).isEqualTo(folded));
    assertThat(Words.of("Slack-tide kick, n° 2 “wörld”"))
        .containsExactly("slack", "tide", "kick", "n", "2", "world");
  }
}
