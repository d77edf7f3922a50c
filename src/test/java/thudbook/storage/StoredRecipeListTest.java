package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.access.Hands;
import thudbook.changes.Act;
import thudbook.changes.Write;
import thudbook.envelopes.Drive;
import thudbook.library.Counts;
import thudbook.library.Facet;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.RecipeList.Row;
import thudbook.library.Wanted;
import thudbook.library.Words;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;

/** Property: the list shows every recipe once, in order, whatever the size of its pages. */
class StoredRecipeListTest {
  @TempDir Path folder;
  private Database database;

  @BeforeEach
  void open() {
    database = Database.open(folder);
  }

  @AfterEach
  void close() {
    database.close();
  }

  @ParameterizedTest
  @MethodSource("orders")
  void pagesOfFiveHundredRowsWithEqualKeysHaveNoGapsAndNoDuplicates(Ordering order) {
    addFiveHundred();
    for (int limit : new int[] {7, 100, 200}) {
      List<Row> forward = new ArrayList<>();
      Deque<String> previous = new ArrayDeque<>();
      String after = null;
      do {
        Library.Page page = page(new Asked(order, null, limit, after));
        assertThat(page.found().total()).isEqualTo(500);
        assertThat(page.found().offset()).isEqualTo(forward.size());
        if (page.found().previous() == null) {
          assertThat(forward).isEmpty();
        } else {
          previous.push(page.found().previous());
        }
        forward.addAll(page.rows());
        after = page.found().next();
      } while (after != null);
      assertThat(forward).hasSize(500);
      assertThat(forward.stream().map(Row::slug).distinct()).hasSize(500);
      if (order.equals(Ordering.TITLE)) {
        assertThat(forward.stream().map(row -> Words.fold(row.title()))).isSorted();
      } else {
        assertThat(forward.stream().map(Row::changedAt))
            .isSortedAccordingTo(Collections.reverseOrder());
      }
      assertThat(backwards(order, limit, previous)).isEqualTo(slugs(forward, limit));
    }
  }

  /** The pages before the last one, by the cursors to their previous pages. */
  private List<List<String>> backwards(Ordering order, int limit, Deque<String> previous) {
    List<List<String>> pages = new ArrayList<>();
    for (String cursor : previous) {
      List<Row> rows = page(new Asked(order, null, limit, cursor)).rows();
      pages.add(rows.stream().map(Row::slug).toList());
    }
    Collections.reverse(pages);
    return pages;
  }

  private static List<List<String>> slugs(List<Row> rows, int limit) {
    List<List<String>> pages = new ArrayList<>();
    for (int from = 0; from + limit < rows.size(); from += limit) {
      pages.add(rows.subList(from, from + limit).stream().map(Row::slug).toList());
    }
    return pages;
  }

  private void addFiveHundred() {
    Random random = new Random(5);
    // Ten titles and five times for 500 recipes: most rows are equal in what they are ordered by.
    List<Write<Recipe>> recipes =
        IntStream.range(0, 500)
            .mapToObj(
                i ->
                    Written.unread(
                        Written.recipe("r" + i, "Tick " + random.nextInt(10), List.of(), "any"),
                        null))
            .toList();
    for (int i = 0; i < 5; i++) {
      database
          .changes()
          .write(
              Act.of(recipes.subList(i * 100, (i + 1) * 100)),
              Hands.OWNER,
              Written.NOON.plusSeconds(random.nextInt(3)),
              "a hundred");
    }
  }

  @Test
  void titlesAreOrderedWithoutCaseAndAccents() {
    Written.add(
        database,
        Stream.of("zinc", "Élan", "anvil", "echo", "Émigré", "Anvil 2", "eave", "Ärmel")
            .map(title -> unread(title, List.of())));
    assertThat(titles(new Asked(Ordering.TITLE, null, 50, null)))
        .containsExactly("anvil", "Anvil 2", "Ärmel", "eave", "echo", "Élan", "Émigré", "zinc");
  }

  @Test
  void aTagFiltersWhateverItsCase() {
    Written.add(
        database,
        Stream.of(
            unread("one", List.of("dry", "kick")),
            unread("two", List.of("Dry")),
            unread("three", List.of("kick"))));
    Library.Page page = page(new Asked(Ordering.TITLE, "DRY", 1, null));
    assertThat(page.found().total()).isEqualTo(2);
    assertThat(page.rows()).extracting(Row::title).containsExactly("one");
    assertThat(titles(new Asked(Ordering.TITLE, "DRY", 1, page.found().next())))
        .containsExactly("two");
    assertThat(titles(new Asked(Ordering.NEWEST, "no such tag", 50, null))).isEmpty();
    assertThat(
            database
                .library()
                .search()
                .counts(Wanted.ALL, Hands.OWNER, List.of())
                .values()
                .get(Facet.TAG))
        .extracting(Counts.Value::key, Counts.Value::label, Counts.Value::recipes)
        .containsExactly(tuple("dry", "Dry", 2), tuple("kick", "kick", 2));
  }

  @Test
  void aRowSaysWhatItsRecipeSays() {
    Prediction prediction = Written.prediction(Map.of(Metric.HOLD, 0.004), EnumSet.of(Metric.HOLD));
    Written.add(
        database,
        List.of(Written.added(Written.gate("keeper-twin", "Keeper twin"))),
        List.of(),
        Hands.OWNER);
    Written.add(
        database,
        Stream.of(
            Written.unread(
                Written.recipe(
                    "whole",
                    "Whole",
                    List.of("wood", "dry"),
                    Written.recipe("x", "x", List.of(), "g").source(),
                    null,
                    List.of(
                        new StageEntry("keeper-twin", "quick", Drive.UNITY, null),
                        new StageEntry("storm-door", null, Drive.UNITY, null),
                        new StageEntry(null, null, Drive.UNITY, null))),
                prediction),
            Written.unread(
                Written.recipe("bare", "Bare", List.of(), null, null, List.of()), null)));
    List<Row> rows = page(new Asked(Ordering.TITLE, null, 50, null)).rows();
    Row whole = rows.get(1);
    assertThat(whole.tags()).containsExactly("wood", "dry");
    assertThat(whole.channels()).containsExactly("Keeper twin, quick", "storm-door");
    assertThat(whole.sourceKind()).isEqualTo("oscillator");
    assertThat(whole.by()).isEqualTo("Oona");
    assertThat(whole.heard()).isEqualTo("short, woody");
    assertThat(whole.changedAt()).isEqualTo(Written.NOON);
    assertThat(whole.metrics()).isEqualTo(prediction.metrics());
    assertThat(whole.shape()).isEqualTo(prediction.shape());
    assertThat(whole.stale()).isFalse();
    Row bare = rows.get(0);
    assertThat(bare.sourceKind()).isNull();
    assertThat(bare.metrics()).isNull();
    assertThat(bare.shape()).isNull();
    assertThat(bare.channels()).isEmpty();
  }

  @Test
  void aCursorOfAnotherSearchIsRefused() {
    Written.add(database, IntStream.range(0, 3).mapToObj(i -> unread("Same " + i, List.of("dry"))));
    String next = page(new Asked(Ordering.TITLE, "dry", 1, null)).found().next();
    assertThat(next).isNotNull();
    assertThat(titles(new Asked(Ordering.TITLE, "Dry", 1, next))).containsExactly("Same 1");
    assertRefused(new Asked(Ordering.TITLE, null, 1, next));
    assertRefused(new Asked(Ordering.NEWEST, "dry", 1, next));
    assertRefused(new Asked(Ordering.TITLE, "wet", 1, next));
  }

  @ParameterizedTest
  @ValueSource(strings = {"x", "AQ", "not base 64!", "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"})
  void whatIsNoCursorIsRefused(String text) {
    assertRefused(new Asked(Ordering.NEWEST, null, 10, text));
  }

  private void assertRefused(Asked request) {
    assertThatThrownBy(() -> page(request))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.REFUSED_VALUES);
              assertThat(refusal.faults().get(0).code()).isEqualTo("foreign-cursor");
              assertThat(refusal.faults().get(0).place()).isEqualTo("after");
            });
  }

  static Stream<Ordering> orders() {
    return Stream.of(Ordering.NEWEST, Ordering.TITLE);
  }

  private record Asked(Ordering order, @Nullable String tag, int limit, @Nullable String after) {}

  private Library.Page page(Asked asked) {
    Wanted wanted =
        asked.tag() == null ? Wanted.ALL : Wanted.ALL.choosing(Facet.TAG, Words.fold(asked.tag()));
    return database
        .library()
        .page(wanted, asked.order(), Hands.OWNER, asked.limit(), asked.after());
  }

  private List<String> titles(Asked request) {
    return page(request).rows().stream().map(Row::title).toList();
  }

  private static Write<Recipe> unread(String title, List<String> tags) {
    String slug = Words.fold(title).replace(' ', '-');
    return Written.unread(Written.recipe(slug, title, tags, "any"), null);
  }
}
