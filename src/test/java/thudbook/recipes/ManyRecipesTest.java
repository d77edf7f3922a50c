package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Rise;
import thudbook.equipment.Gate;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.RecipeList.Row;
import thudbook.library.Wanted;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.quantities.Frequency;
import thudbook.recipes.PredictionStore.Progress;
import thudbook.sources.Source;
import thudbook.storage.Database;
import thudbook.storage.OtherProcess;
import thudbook.storage.Written;

/**
 * Scenario: a gate is changed that very many recipes use. The process is killed while it predicts
 * them again, the next one goes on; while it does, the list is read and a recipe is saved. In the
 * end every number is that of a fresh prediction. How many: {@code -Drecipes=20000}.
 */
class ManyRecipesTest {
  private static final int RECIPES = Integer.getInteger("recipes", 2000);
  private static final int KILLED_AT = RECIPES / 3;
  private static final Gate TWIN = Written.gate("keeper-twin", "Keeper twin");

  /** Decays and peaks come round, so that fresh predictions need not be made for each recipe. */
  private static final int DIFFERENT = 97;

  @TempDir Path folder;

  @Test
  @Timeout(value = 15, unit = TimeUnit.MINUTES)
  void everyRecipeFollowsItsGateAcrossAKillAndASave() throws Exception {
    long change;
    try (Database database = Database.open(folder)) {
      write(database);
      change =
          Written.acts(database, () -> Written.NOON, () -> {})
              .keeper(Documents.GATE)
              .change(TWIN.id(), 1, wakingEarlier(), Hands.OWNER, "measured again");
      assertThat(database.predictions().progress(change)).hasValue(new Progress(RECIPES, RECIPES));
      assertThat(rows(database)).hasSize(RECIPES).allMatch(Row::stale);
    }

    Process killed = OtherProcess.start(Killed.class, folder.toString(), String.valueOf(KILLED_AT));
    assertThat(killed.waitFor()).isEqualTo(Killed.EXIT);

    try (Database database = Database.open(folder)) {
      Progress left = database.predictions().progress(change).orElseThrow();
      assertThat(left.waiting()).isBetween(RECIPES - KILLED_AT, RECIPES - 1);
      Recipe late = recipe(RECIPES - 1, 9.5);
      goOn(database, late);

      assertThat(database.predictions().progress(change)).hasValue(new Progress(RECIPES, 0));
      Map<Recipe, Metrics> fresh = new HashMap<>();
      List<Row> rows = rows(database);
      assertThat(rows).hasSize(RECIPES);
      for (Row row : rows) {
        int number = Integer.parseInt(row.slug().substring(1));
        Recipe same =
            row.slug().equals(late.slug()) ? late : recipe(number % DIFFERENT, peak(number));
        assertThat(row.stale()).as(row.slug()).isFalse();
        assertThat(row.metrics())
            .as(row.slug())
            .isEqualTo(fresh.computeIfAbsent(same, r -> metrics(r, database.gates())));
      }
    }
  }

  /** Predicts what is left; in its midst the list is read and the last recipe is saved. */
  private static void goOn(Database database, Recipe late) {
    AtomicInteger calls = new AtomicInteger();
    Repredictions worker =
        new Repredictions(
            database.predictions(),
            database.gates(),
            Predictor.MODEL_VERSION,
            sound -> {
              if (calls.incrementAndGet() == 150) {
                readAndSave(database, late);
              }
              return Predictor.predict(sound);
            });
    worker.remakeAll();
    assertThat(calls.get()).isGreaterThan(150);
  }

  private static void readAndSave(Database database, Recipe late) {
    Library.Page page = page(database, null);
    assertThat(page.rows()).hasSize(200).allMatch(row -> row.metrics() != null);
    Kept<Recipe> stored = database.recipes().find(late.slug()).orElseThrow();
    Written.acts(database, () -> Written.NOON, () -> {})
        .keeper(Documents.RECIPE)
        .change(late.id(), stored.version(), late, Hands.OWNER, "in the middle");
    assertThat(page(database, null).rows())
        .filteredOn(row -> row.slug().equals(late.slug()))
        .allSatisfy(row -> assertThat(row.stale()).isFalse());
  }

  /** Predicts again and dies without a word. */
  static final class Killed {
    static final int EXIT = 9;

    private Killed() {}

    /** Takes the folder, and at which prediction to die. */
    public static void main(String[] arguments) {
      int last = Integer.parseInt(arguments[1]);
      AtomicInteger calls = new AtomicInteger();
      try (Database database = Database.open(Path.of(arguments[0]))) {
        new Repredictions(
                database.predictions(),
                database.gates(),
                Predictor.MODEL_VERSION,
                sound -> {
                  if (calls.incrementAndGet() == last) {
                    Runtime.getRuntime().halt(EXIT);
                  }
                  return Predictor.predict(sound);
                })
            .remakeAll();
      }
    }
  }

  private static void write(Database database) {
    Written.add(database, List.of(Written.added(TWIN)), List.of(), Hands.OWNER);
    // What they were before does not matter here, so one prediction serves for all.
    Prediction any =
        Predictor.predict(
            Resolution.of(recipe(0, peak(0)), database.gates()).complete().orElseThrow());
    Written.add(
        database,
        List.of(),
        IntStream.range(0, RECIPES).mapToObj(i -> Written.added(recipe(i, peak(i)), any)).toList(),
        Hands.OWNER);
  }

  private static double peak(int number) {
    return 3 + number % DIFFERENT * 0.06;
  }

  private static Recipe recipe(int number, double peakVolts) {
    return Written.recipe(
        "r" + number,
        "Recipe " + number,
        List.of("many"),
        new SourceEntry.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5),
        new EnvelopeEntry.AttackHoldDecay(
            peakVolts,
            Rise.linear(0.001),
            0,
            new EnvelopeEntry.FallEntry(
                0.02 + number % DIFFERENT * 0.004, Curve.EXPONENTIAL, 0.01)),
        List.of(new StageEntry("keeper-twin", "quick", Drive.UNITY, null)));
  }

  private static Metrics metrics(Recipe recipe, Things<Gate> gates) {
    return Predictor.predict(Resolution.of(recipe, gates).complete().orElseThrow()).metrics();
  }

  private static Gate wakingEarlier() {
    return new Gate(
        TWIN.id(),
        TWIN.slug(),
        TWIN.title(),
        TWIN.caution(),
        List.of(Written.channel("quick", 1.4), Written.channel("slow", 1.4)),
        TWIN.notes());
  }

  private static List<Row> rows(Database database) {
    List<Row> rows = new ArrayList<>();
    String after = null;
    do {
      Library.Page page = page(database, after);
      rows.addAll(page.rows());
      after = page.found().next();
    } while (after != null);
    return rows;
  }

  private static Library.Page page(Database database, @Nullable String after) {
    return database.library().page(Wanted.ALL, Ordering.TITLE, Hands.OWNER, 200, after);
  }
}
