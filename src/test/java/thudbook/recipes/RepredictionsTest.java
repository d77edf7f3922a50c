package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.changes.Write;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.RecipeList.Row;
import thudbook.library.Wanted;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Reach;
import thudbook.predictions.SmallShape;
import thudbook.predictions.Sound;
import thudbook.storage.Database;
import thudbook.storage.OtherProcess;
import thudbook.storage.Written;

/**
 * Scenario: predictions in a real file are remade when the model changes, also across saves that
 * come between and a process that is killed. What a later model would say is a constant here, so
 * that each row tells which model it is of.
 */
class RepredictionsTest {
  private static final int LATER = Predictor.MODEL_VERSION + 1;
  private static final Prediction OLD = saying(1);
  private static final Prediction NEW = saying(2);

  @TempDir Path folder;

  @Test
  void everyPredictionOfAnotherModelIsRemade() {
    try (Database database = Database.open(folder)) {
      addRecipes(database, 250);
      assertThat(remade(database, sound -> NEW)).isEqualTo(250);
      assertThat(peaks(database)).containsOnly(2.0);
      assertThat(rows(database)).noneMatch(Row::stale);
      assertThat(remade(database, sound -> NEW)).isZero();
    }
  }

  @Test
  void aRecipeThatCannotBeComputedStaysMarkedAndHoldsUpNoOther() {
    try (Database database = Database.open(folder)) {
      addRecipes(database, 150);
      AtomicInteger calls = new AtomicInteger();
      int kept =
          remade(
              database,
              sound -> {
                if (calls.getAndIncrement() == 10) {
                  throw new ArithmeticException("on purpose");
                }
                return NEW;
              });
      assertThat(kept).isEqualTo(149);
      assertThat(rows(database)).filteredOn(Row::stale).hasSize(1);
      assertThat(remade(database, sound -> NEW)).isEqualTo(1);
      assertThat(rows(database)).noneMatch(Row::stale);
    }
  }

  @Test
  void aMarkThatComesBetweenReadingAndKeepingWins() {
    try (Database database = Database.open(folder)) {
      addRecipes(database, 5);
      AtomicInteger calls = new AtomicInteger();
      int kept =
          remade(
              database,
              sound -> {
                if (calls.incrementAndGet() == 3) {
                  markAllAgain(database);
                }
                return NEW;
              });
      assertThat(kept).isEqualTo(5);
      assertThat(calls).hasValue(10);
      assertThat(rows(database)).noneMatch(Row::stale);
    }
  }

  /** Marks all five again, as a save of their gate would: each mark raises the generation. */
  private static void markAllAgain(Database database) {
    List<PredictionStore.Marked> marked = database.predictions().marked(0, 100);
    List<PredictionStore.Remade> olds =
        marked.stream()
            .map(one -> new PredictionStore.Remade(one.key(), one.generation(), OLD))
            .toList();
    assertThat(database.predictions().keep(olds, LATER - 1)).isEqualTo(5);
    assertThat(database.predictions().markOthers(LATER)).isEqualTo(5);
  }

  @Test
  void aGateThatIsAddedMarksTheRecipesThatAreWaitingForIt() {
    try (Database database = Database.open(folder)) {
      Recipe bySlug = Written.recipe("by-slug", "By slug", List.of(), "keeper-twin");
      Recipe byId =
          Written.recipe(
              "by-id",
              "By id",
              List.of(),
              Written.gate("keeper-twin", "Keeper twin").id().toString());
      Recipe other = Written.recipe("other", "Other", List.of(), "storm-door");
      Written.add(
          database,
          List.of(),
          Stream.of(bySlug, byId, other).map(recipe -> Written.added(recipe, null)).toList(),
          Hands.OWNER);
      addGate(database);
      assertThat(rows(database))
          .filteredOn(Row::stale)
          .extracting(Row::slug)
          .containsExactlyInAnyOrder("by-slug", "by-id");
      Repredictions now =
          new Repredictions(
              database.predictions(), database.gates(), Predictor.MODEL_VERSION, sound -> NEW);
      assertThat(now.remakeAll()).isEqualTo(2);
      assertThat(rows(database)).filteredOn(row -> row.metrics() != null).hasSize(2);
      assertThat(rows(database)).noneMatch(Row::stale);
    }
  }

  @Test
  @Timeout(value = 2, unit = TimeUnit.MINUTES)
  void whenTheProcessIsKilledTheNextOneGoesOnWithTheMarks() throws Exception {
    try (Database database = Database.open(folder)) {
      addRecipes(database, 250);
    }
    Process killed = OtherProcess.start(KilledHalfway.class, folder.toString());
    assertThat(killed.waitFor()).isEqualTo(KilledHalfway.EXIT);
    try (Database database = Database.open(folder)) {
      assertThat(rows(database)).filteredOn(Row::stale).hasSize(150);
      assertThat(peaks(database)).filteredOn(peak -> peak == 2.0).hasSize(100);
      assertThat(remade(database, sound -> NEW)).isEqualTo(150);
      assertThat(peaks(database)).containsOnly(2.0);
    }
  }

  /** Remakes predictions and dies without a word at the 130th. */
  static final class KilledHalfway {
    static final int EXIT = 9;

    private KilledHalfway() {}

    public static void main(String[] folder) {
      AtomicInteger calls = new AtomicInteger();
      try (Database database = Database.open(Path.of(folder[0]))) {
        remade(
            database,
            sound -> {
              if (calls.incrementAndGet() == 130) {
                Runtime.getRuntime().halt(EXIT);
              }
              return NEW;
            });
      }
    }
  }

  @Test
  @Timeout(value = 2, unit = TimeUnit.MINUTES)
  void closingKeepsWhatIsReadyAndLeavesTheRestMarked() throws Exception {
    try (Database database = Database.open(folder)) {
      addRecipes(database, 20);
      AtomicInteger calls = new AtomicInteger();
      CountDownLatch sixAreReady = new CountDownLatch(1);
      CountDownLatch goOn = new CountDownLatch(1);
      Repredictions repredictions =
          new Repredictions(
              database.predictions(),
              database.gates(),
              LATER,
              sound -> {
                if (calls.incrementAndGet() >= 7) {
                  sixAreReady.countDown();
                  await(goOn);
                }
                return NEW;
              });
      repredictions.start();
      await(sixAreReady);
      Thread closing = new Thread(repredictions::close);
      closing.start();
      while (closing.getState() != Thread.State.WAITING) {
        Thread.onSpinWait();
      }
      goOn.countDown();
      closing.join();
      // Each thread has ended what it had begun.
      assertThat(calls.get()).isBetween(7, 6 + Runtime.getRuntime().availableProcessors());
      assertThat(peaks(database)).filteredOn(peak -> peak == 2.0).hasSize(calls.get());
      assertThat(rows(database)).filteredOn(Row::stale).hasSize(20 - calls.get());
    }
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static int remade(Database database, Function<Sound, Prediction> model) {
    return new Repredictions(database.predictions(), database.gates(), LATER, model).remakeAll();
  }

  private static void addGate(Database database) {
    Written.add(
        database,
        List.of(Written.added(Written.gate("keeper-twin", "Keeper twin"))),
        List.of(),
        Hands.OWNER);
  }

  private static void addRecipes(Database database, int count) {
    addGate(database);
    List<Write<Recipe>> recipes =
        IntStream.range(0, count)
            .mapToObj(i -> Written.recipe("r" + i, "R " + i, List.of(), "keeper-twin"))
            .map(recipe -> Written.added(recipe, OLD))
            .toList();
    Written.add(database, List.of(), recipes, Hands.OWNER);
  }

  private static List<Row> rows(Database database) {
    Library.Page first = page(database, null);
    return first.found().next() == null
        ? first.rows()
        : Stream.concat(first.rows().stream(), page(database, first.found().next()).rows().stream())
            .toList();
  }

  private static Library.Page page(Database database, @Nullable String after) {
    return database.library().page(Wanted.ALL, Ordering.TITLE, Hands.OWNER, 200, after);
  }

  private static List<Double> peaks(Database database) {
    return rows(database).stream()
        .map(row -> row.metrics().get(Metric.PEAK_DB).orElseThrow())
        .toList();
  }

  private static Prediction saying(double peakDb) {
    return new Prediction(
        new Metrics(Map.of(Metric.PEAK_DB, peakDb), Reach.OPEN, Set.of()),
        List.of(),
        List.of(),
        new SmallShape(Stream.generate(() -> -1.0).limit(SmallShape.POINTS).toList()),
        null);
  }
}
