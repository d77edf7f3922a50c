package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.library.Ordering;
import thudbook.library.RecipeList.Row;
import thudbook.library.Wanted;
import thudbook.predictions.Predictor;
import thudbook.storage.Database;
import thudbook.storage.Written;

/** Scenario: recipes are added to a real file with their predictions. */
class RecipesTest {
  private static final Gate TWIN = Written.gate("keeper-twin", "Keeper twin");
  private static final List<Gates.Written> GATES =
      List.of(new Gates.Written(TWIN, Documents.write(TWIN)));
  private static final Recipe WHOLE = Written.recipe("whole", "Whole", List.of(), "keeper-twin");
  private static final Recipe WAITING =
      Written.recipe("waiting", "Waiting for its gate", List.of(), "storm-door");

  @TempDir Path folder;

  @Test
  void samplesAreLoadedOnceWithTheTimeOfTheClock() {
    try (Database database = Database.open(folder)) {
      Recipes recipes = acts(database);
      assertThat(recipes.loadSamples(GATES, List.of(written(WHOLE), written(WAITING)), List.of()))
          .isTrue();
      assertThat(recipes.loadSamples(GATES, List.of(written(WHOLE)), List.of())).isFalse();
      RecipeStore.Stored stored = database.recipes().find("whole").orElseThrow();
      assertThat(stored.author()).isEqualTo(Author.SAMPLES);
      assertThat(stored.createdAt()).isEqualTo(Written.NOON);
    }
  }

  @Test
  void samplesAreNotLoadedIntoANotebookThatWasWrittenTo() {
    try (Database database = Database.open(folder)) {
      Recipes recipes = acts(database);
      recipes.add(List.of(), List.of(written(WAITING)), Author.OWNER, "wrote one down");
      assertThat(recipes.loadSamples(GATES, List.of(written(WHOLE)), List.of())).isFalse();
      assertThat(database.recipes().slugTaken("whole")).isFalse();
    }
  }

  @Test
  void aRecipeIsPredictedWithTheGatesThatComeWithItOrWereThere() {
    try (Database database = Database.open(folder)) {
      Recipes recipes = acts(database);
      recipes.add(GATES, List.of(written(WHOLE), written(WAITING)), Author.OWNER, "two");
      Recipe later = Written.recipe("later", "Later", List.of(), "keeper-twin");
      recipes.add(List.of(), List.of(written(later)), Author.OWNER, "one more");
      List<Row> rows =
          database.library().page(Wanted.ALL, Ordering.TITLE, Author.OWNER, 10, null).rows();
      var expected =
          Predictor.predict(Resolution.of(WHOLE, database.gates()).complete().orElseThrow());
      assertThat(rows).extracting(Row::slug).containsExactly("later", "waiting", "whole");
      assertThat(rows.get(0).metrics()).isEqualTo(expected.metrics());
      assertThat(rows.get(0).shape()).isEqualTo(expected.shape());
      assertThat(rows.get(1).metrics()).isNull();
      assertThat(rows.get(2).metrics()).isEqualTo(expected.metrics());
    }
  }

  private static Recipes.Written written(Recipe recipe) {
    return new Recipes.Written(recipe, Documents.write(recipe));
  }

  private static Recipes acts(Database database) {
    return new Recipes(
        database.changes(), database.recipes(), database.gates(), () -> Written.NOON, () -> {});
  }
}
