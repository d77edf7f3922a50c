package thudbook.library;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.recipes.Recipe;
import thudbook.recipes.Repredictions;
import thudbook.storage.Database;
import thudbook.storage.Written;
import thudbook.yardstick.RandomLibrary;

/**
 * Property: what is found in a library of 20,000 recipes, its order and its counts are those of a
 * search that looks at every stored recipe, at first and after edits, bins, merged tags and changed
 * gates; and a catalogue that followed all of that is the one that a new start builds.
 */
class FindingAgreementTest {
  private static final int RECIPES = Integer.getInteger("recipes", 20_000);
  private static final int QUERIES = 2_000;
  private static final Instant LATER = Instant.parse("2026-11-02T09:30:00Z");
  private static final Quantity[] QUANTITIES = Quantity.values();

  @TempDir static Path folder;
  private static Database database;
  private static RandomLibrary made;
  private static final Map<UUID, Long> USED = new HashMap<>();

  private final Random random = new Random(4);

  @BeforeAll
  static void fill() {
    database = Database.open(folder);
    made = new RandomLibrary(4, 1_500);
    made.fill(database, RECIPES);
    Random chance = new Random(5);
    for (int i = 0; i < 300; i++) {
      UUID id = database.recipes().find("r" + chance.nextInt(RECIPES)).orElseThrow().thing().id();
      database.marks().favourite(id, Hands.OWNER, true);
      if (i % 3 == 0) {
        database.marks().used(List.of(id), Hands.OWNER, LATER.plusSeconds(i));
        USED.put(id, LATER.plusSeconds(i).toEpochMilli());
      }
    }
  }

  @AfterAll
  static void close() {
    database.close();
  }

  @Test
  void everySearchFindsWhatALookAtEveryRecipeFinds() throws Exception {
    List<LiteralSearch.One> all = read();
    assertThat(all).hasSize(RECIPES);
    agree(all, QUERIES / 2);
    disturb();
    List<LiteralSearch.One> left = read();
    assertThat(left.size()).isBetween(RECIPES - 100, RECIPES - 1);
    agree(left, QUERIES / 2);
    List<Object> anew = Database.find(folder, library -> snapshot(library, left));
    assertThat(anew).as("a catalogue built anew").isEqualTo(snapshot(database.library(), left));
  }

  // Reading
  // ----------------------------------------------------------------------------------------

  private static List<LiteralSearch.One> read() {
    List<LiteralSearch.One> all = new ArrayList<>();
    // Gates have keys among those of recipes.
    int last = RECIPES + made.gates().size();
    for (int from = 0; from < last; from += 200) {
      List<Integer> keys = new ArrayList<>();
      for (int key = from + 1; key <= Math.min(last, from + 200); key++) {
        keys.add(key);
      }
      for (RecipeList.Row row : database.library().list().rows(keys, Hands.OWNER)) {
        Kept<Recipe> stored = database.recipes().find(row.id().toString()).orElseThrow();
        if (stored.binnedAt() == null) {
          all.add(new LiteralSearch.One(stored.thing(), row));
        }
      }
    }
    return all;
  }

  /** Everything that can be asked of each quantity, facet and flag, and the shapes. */
  private static List<Object> snapshot(Library library, List<LiteralSearch.One> some) {
    List<Object> all = new ArrayList<>();
    all.add(library.search().counts(Wanted.ALL, Hands.OWNER, List.of(QUANTITIES)));
    for (Quantity quantity : QUANTITIES) {
      all.add(keys(library, Wanted.ALL, Ordering.of(quantity, false)));
    }
    all.add(keys(library, Wanted.ALL, Ordering.LAST_USED));
    all.add(keys(library, Wanted.ALL, Ordering.TITLE));
    for (LiteralSearch.One one : some.subList(0, 50)) {
      all.add(library.alike().nearest(one.row.key(), Likeness.BOTH, 20));
    }
    return all;
  }

  private static List<Integer> keys(Library library, Wanted wanted, Ordering ordering) {
    return library.search().find(wanted, ordering, Hands.OWNER, 200, null).keys();
  }

  // Agreement
  // --------------------------------------------------------------------------------------

  private void agree(List<LiteralSearch.One> all, int queries) {
    LiteralSearch literal = new LiteralSearch(all);
    Search search = database.library().search();
    int found = 0;
    for (int i = 0; i < queries; i++) {
      Wanted wanted = wanted(all);
      Ordering ordering = ordering();
      List<Integer> expected = literal.find(wanted, ordering, one -> USED.get(one.recipe.id()));
      found += expected.isEmpty() ? 0 : 1;
      pages(search, wanted, ordering, expected);
      assertThat(search.all(wanted, Hands.OWNER))
          .as("%s", wanted)
          .isEqualTo(expected.stream().sorted().toList());
      if (i % 4 == 0) {
        List<Quantity> quantities = List.copyOf(EnumSet.of(any(QUANTITIES), Quantity.HOLD));
        Counts counts = search.counts(wanted, Hands.OWNER, quantities);
        assertThat(unlabelled(counts))
            .as("%s", wanted)
            .isEqualTo(literal.counts(wanted, quantities));
      }
    }
    assertThat(found).as("searches that find something").isGreaterThan(queries / 3);
  }

  private static Counts unlabelled(Counts counts) {
    Map<Facet, List<Counts.Value>> values = new HashMap<>();
    counts
        .values()
        .forEach(
            (facet, list) ->
                values.put(
                    facet,
                    list.stream()
                        .map(value -> new Counts.Value(value.key(), "", value.recipes()))
                        .toList()));
    return new Counts(counts.total(), values, counts.flags(), counts.histograms());
  }

  /** The first pages, one in the middle by its cursor, and back. */
  private void pages(Search search, Wanted wanted, Ordering ordering, List<Integer> expected) {
    int limit = 1 + random.nextInt(60);
    Found first = search.find(wanted, ordering, Hands.OWNER, limit, null);
    assertThat(first.total()).as("%s", wanted).isEqualTo(expected.size());
    assertThat(first.keys())
        .as("%s %s", wanted, ordering)
        .isEqualTo(expected.subList(0, Math.min(limit, expected.size())));
    assertThat(first.previous()).isNull();
    assertThat(first.next() != null).isEqualTo(expected.size() > limit);
    if (first.next() == null) {
      return;
    }
    Found second = search.find(wanted, ordering, Hands.OWNER, limit, first.next());
    assertThat(second.offset()).isEqualTo(limit);
    assertThat(second.keys())
        .isEqualTo(expected.subList(limit, Math.min(2 * limit, expected.size())));
    assertThat(second.previous()).isEmpty();
    if (second.next() != null) {
      Found third = search.find(wanted, ordering, Hands.OWNER, limit, second.next());
      assertThat(search.find(wanted, ordering, Hands.OWNER, limit, third.previous()))
          .isEqualTo(second);
    }
  }

  // What is asked
  // ----------------------------------------------------------------------------------

  private Wanted wanted(List<LiteralSearch.One> all) {
    Wanted wanted = Wanted.ALL;
    LiteralSearch.One near = all.get(random.nextInt(all.size()));
    for (int parts = random.nextInt(4); parts >= 0; parts--) {
      wanted =
          switch (random.nextInt(9)) {
            case 0 -> wanted.with(term(near));
            case 1 -> wanted.without(term(near));
            case 2 -> chosen(wanted, near);
            case 3 -> chosen(wanted, near);
            case 4 -> wanted.refusing(any(Facet.values()), "nothing of this name");
            case 5 -> wanted.with(any(Flag.values()), random.nextInt(4) == 0);
            case 6 -> wanted.madeIn(days());
            case 7 -> wanted.changedIn(days());
            default -> limited(wanted, near, all);
          };
    }
    return wanted;
  }

  private Wanted chosen(Wanted wanted, LiteralSearch.One near) {
    Facet facet = any(Facet.values());
    List<String> values = List.copyOf(near.values(facet));
    if (values.isEmpty()) {
      return wanted;
    }
    String value = values.get(random.nextInt(values.size()));
    return random.nextInt(4) == 0 ? wanted.refusing(facet, value) : wanted.choosing(facet, value);
  }

  private Term term(LiteralSearch.One near) {
    List<List<String>> texts = new ArrayList<>();
    near.words.values().forEach(texts::addAll);
    texts.addAll(near.tagWords);
    texts.removeIf(List::isEmpty);
    List<String> words = texts.get(random.nextInt(texts.size()));
    int start = random.nextInt(words.size());
    List<String> tokens =
        new ArrayList<>(
            words.subList(start, Math.min(words.size(), start + 1 + random.nextInt(2))));
    boolean beginning = random.nextBoolean();
    if (beginning) {
      String last = tokens.get(tokens.size() - 1);
      tokens.set(
          tokens.size() - 1,
          last.substring(
              0,
              last.offsetByCodePoints(
                  0, 1 + random.nextInt(last.codePointCount(0, last.length())))));
    }
    return new Term(tokens, beginning);
  }

  private Wanted limited(Wanted wanted, LiteralSearch.One near, List<LiteralSearch.One> all) {
    Quantity quantity = any(QUANTITIES);
    double one = near.number(quantity);
    double other = all.get(random.nextInt(all.size())).number(quantity);
    if (Double.isNaN(one)) {
      return wanted;
    }
    // Limits are numbers that occur, so that it matters whether they are in themselves.
    boolean itself = random.nextBoolean();
    return wanted.with(
        quantity,
        switch (random.nextInt(3)) {
          case 0 -> new Limits(one, itself, null, false);
          case 1 -> new Limits(null, false, one, itself);
          default ->
              Double.isNaN(other)
                  ? Limits.between(one, null)
                  : Limits.between(Math.min(one, other), Math.max(one, other));
        });
  }

  private Days days() {
    LocalDate from = LocalDate.of(2020, 1, 1).plusDays(random.nextInt(30));
    return random.nextBoolean() ? new Days(from, null) : new Days(null, from.plusYears(2));
  }

  private Ordering ordering() {
    return switch (random.nextInt(6)) {
      case 0 -> Ordering.NEWEST;
      case 1 -> Ordering.TITLE;
      case 2 -> Ordering.RELEVANCE;
      case 3 -> Ordering.LAST_USED;
      default -> Ordering.of(any(QUANTITIES), random.nextBoolean());
    };
  }

  private <T> T any(T[] values) {
    return values[random.nextInt(values.length)];
  }

  // Disturbing
  // -------------------------------------------------------------------------------------

  /** Edits, bins, tags that are renamed, merged and deleted, a gate that is changed and renamed. */
  private void disturb() throws Exception {
    Repredictions work = new Repredictions(database.predictions(), database.gates());
    Keeper<Recipe> recipes =
        Written.acts(database, () -> LATER, work::wake).keeper(Documents.RECIPE);
    Tagging tagging = new Tagging(database.library(), recipes);
    for (int i = 0; i < 60; i++) {
      Recipe recipe = database.recipes().find("r" + random.nextInt(RECIPES)).orElseThrow().thing();
      Kept<Recipe> stored = database.recipes().find(recipe.slug()).orElseThrow();
      Recipe changed = recipe.withTags(List.of("Changed", "kick " + i));
      recipes.change(recipe.id(), stored.version(), changed, Hands.OWNER, "other tags");
    }
    for (int i = 0; i < 40; i++) {
      Kept<Recipe> stored = database.recipes().find("r" + random.nextInt(RECIPES)).orElseThrow();
      if (stored.binnedAt() == null) {
        recipes.bin(List.of(stored.thing().id()), Hands.OWNER);
      }
    }
    tagging.rename(made.tags().get(30), "Quite another", Hands.OWNER);
    tagging.rename(made.tags().get(40), made.tags().get(41), Hands.OWNER);
    tagging.delete(made.tags().get(50), Hands.OWNER);
    Keeper<Gate> gates = Written.acts(database, () -> LATER, work::wake).keeper(Documents.GATE);
    Gate gate = made.gates().get(5);
    List<StudioChannel> channels = new ArrayList<>(gate.channels());
    Collections.reverse(channels);
    channels.set(0, made.gates().get(1).channels().get(1));
    Gate other =
        new Gate(gate.id(), gate.slug(), "Renamed", gate.caution(), channels, gate.notes());
    gates.change(other.id(), 1, other, Hands.OWNER, "another long");
    work.start();
    while (!database.predictions().marked(0, 1).isEmpty()) {
      Thread.sleep(20);
    }
    work.close();
  }
}
