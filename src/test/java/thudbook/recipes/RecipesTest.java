package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.access.Hands;
import thudbook.changes.Changes;
import thudbook.changes.Kept;
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
  private static final List<Gate> GATES = List.of(TWIN);
  private static final Recipe WHOLE = Written.recipe("whole", "Whole", List.of(), "keeper-twin");
  private static final Recipe WAITING =
      Written.recipe("waiting", "Waiting for its gate", List.of(), "storm-door");

  @TempDir Path folder;

  @Test
  void whatIsWrittenHasItsAuthorAndTheTimeOfTheClock() {
    try (Database database = Database.open(folder)) {
      Changes acts = acts(database);
      assertThat(acts.isEmpty()).isTrue();
      acts.write(Written.writes(GATES, List.of(WHOLE, WAITING)), Author.SAMPLES, "loaded");
      assertThat(acts.isEmpty()).isFalse();
      Kept<Recipe> stored = database.recipes().find("whole").orElseThrow();
      assertThat(stored.origin().author()).isEqualTo(Author.SAMPLES);
      assertThat(stored.origin().createdAt()).isEqualTo(Written.NOON);
    }
  }

  @Test
  void aNotebookIsNotEmptyOnceItWasWrittenToThoughAllOfItIsInTheBin() {
    try (Database database = Database.open(folder)) {
      Changes acts = acts(database);
      acts.keeper(Documents.RECIPE).create(WAITING, Hands.OWNER, "wrote one down");
      acts.keeper(Documents.RECIPE).bin(List.of(WAITING.id()), Hands.OWNER);
      assertThat(acts.isEmpty()).isFalse();
    }
  }

  @Test
  void aRecipeIsPredictedWithTheGatesThatComeWithItOrWereThere() {
    try (Database database = Database.open(folder)) {
      Changes acts = acts(database);
      acts.write(Written.writes(GATES, List.of(WHOLE, WAITING)), Hands.OWNER, "two");
      Recipe later = Written.recipe("later", "Later", List.of(), "keeper-twin");
      acts.keeper(Documents.RECIPE).create(later, Hands.OWNER, "one more");
      List<Row> rows =
          database.library().page(Wanted.ALL, Ordering.TITLE, Hands.OWNER, 10, null).rows();
      var expected =
          Predictor.predict(Resolution.of(WHOLE, database.gates()).complete().orElseThrow());
      assertThat(rows).extracting(Row::slug).containsExactly("later", "waiting", "whole");
      assertThat(rows.get(0).metrics()).isEqualTo(expected.metrics());
      assertThat(rows.get(0).shape()).isEqualTo(expected.shape());
      assertThat(rows.get(1).metrics()).isNull();
      assertThat(rows.get(2).metrics()).isEqualTo(expected.metrics());
    }
  }

  private static Changes acts(Database database) {
    return Written.acts(database, () -> Written.NOON, () -> {});
  }
}
