package thudbook.storage;

import static thudbook.storage.schema.Tables.RECIPE_PARENT;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.THING;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import thudbook.documents.Documents;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;

/** Recipes, and what hangs on them in tables of their own. */
final class StoredRecipes extends StoredThings<Recipe> implements RecipeStore {
  private final Connections connections;

  StoredRecipes(Connections connections) {
    super(connections, Documents.RECIPE);
    this.connections = connections;
  }

  @Override
  public List<Use> using(UUID gate) {
    return connections.read(
        db ->
            db
                .select(THING.SLUG, THING.TITLE, RECIPE_STAGE.CHANNEL)
                .from(RECIPE_STAGE)
                .join(THING)
                .on(THING.ID.eq(RECIPE_STAGE.RECIPE))
                .where(
                    RECIPE_STAGE.GATE.in(namesOf(Documents.GATE, gate)), THING.BINNED_AT.isNull())
                .orderBy(THING.TITLE_KEY, THING.ID, RECIPE_STAGE.POSITION)
                .fetchGroups(THING.SLUG)
                .values()
                .stream()
                .map(
                    stages ->
                        new Use(
                            stages.get(0).value1(),
                            stages.get(0).value2(),
                            stages.getValues(RECIPE_STAGE.CHANNEL).stream()
                                .filter(Objects::nonNull)
                                .distinct()
                                .toList()))
                .toList());
  }

  @Override
  public List<Variation> variations(UUID recipe, int limit) {
    return connections.read(
        db ->
            db.select(THING.SLUG, THING.TITLE)
                .from(RECIPE_PARENT)
                .join(THING)
                .on(THING.ID.eq(RECIPE_PARENT.RECIPE))
                .where(
                    RECIPE_PARENT.PARENT.in(namesOf(Documents.RECIPE, recipe)),
                    THING.UUID.ne(recipe.toString()),
                    THING.BINNED_AT.isNull())
                .orderBy(THING.TITLE_KEY, THING.ID)
                .limit(limit)
                .fetch(row -> new Variation(row.value1(), row.value2())));
  }
}
