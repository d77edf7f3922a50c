package thudbook.storage;

import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;
import static thudbook.storage.schema.Tables.TAG;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore.NewRecipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/** The rows of a recipe's first revision. */
final class NewRecipeRows {
  private NewRecipeRows() {}

  static void insert(DSLContext db, NewRecipe added, Author author, Instant at, long change) {
    Recipe recipe = added.recipe();
    long id =
        db.insertInto(RECIPE)
            .set(RECIPE.UUID, recipe.id().toString())
            .set(RECIPE.SLUG, recipe.slug())
            .set(RECIPE.TITLE, recipe.title())
            .set(RECIPE.TITLE_KEY, Folding.fold(recipe.title()))
            .set(RECIPE.AUTHOR, author.name())
            .set(RECIPE.MADE_BY, recipe.by())
            .set(RECIPE.HEARD, recipe.heard())
            .set(RECIPE.SOURCE_KIND, kind(recipe.source()))
            .set(RECIPE.VERSION, 1L)
            .set(RECIPE.HEAD, 1L)
            .set(RECIPE.CREATED_AT, at.toEpochMilli())
            .set(RECIPE.CHANGED_AT, at.toEpochMilli())
            .returningResult(RECIPE.ID)
            .fetchSingle()
            .value1();
    db.insertInto(RECIPE_SLUG)
        .set(RECIPE_SLUG.SLUG, recipe.slug())
        .set(RECIPE_SLUG.RECIPE, id)
        .execute();
    List<Long> tags = tags(db, recipe.tags());
    db.insertInto(RECIPE_REVISION)
        .set(RECIPE_REVISION.RECIPE, id)
        .set(RECIPE_REVISION.NUMBER, 1L)
        .set(RECIPE_REVISION.CHANGE, change)
        .set(RECIPE_REVISION.SHA256, StoredText.sha256(added.document()))
        .set(RECIPE_REVISION.DOCUMENT, added.document())
        .set(RECIPE_REVISION.TAG_IDS, tags.toString())
        .execute();
    for (int i = 0; i < tags.size(); i++) {
      db.insertInto(RECIPE_TAG)
          .set(RECIPE_TAG.TAG, tags.get(i))
          .set(RECIPE_TAG.RECIPE, id)
          .set(RECIPE_TAG.POSITION, i + 1L)
          .execute();
    }
    for (int i = 0; i < recipe.stages().size(); i++) {
      StageEntry stage = recipe.stages().get(i);
      db.insertInto(RECIPE_STAGE)
          .set(RECIPE_STAGE.RECIPE, id)
          .set(RECIPE_STAGE.POSITION, i + 1L)
          .set(RECIPE_STAGE.GATE, stage.gate())
          .set(RECIPE_STAGE.CHANNEL, stage.channel())
          .execute();
    }
    StoredPredictions.add(db, id, added.prediction());
  }

  /** The keys of tags in the order of the text; new ones are added. */
  private static List<Long> tags(DSLContext db, List<String> names) {
    Set<Long> ids = new LinkedHashSet<>();
    for (String name : names) {
      String folded = Folding.fold(name);
      Long known = db.select(TAG.ID).from(TAG).where(TAG.FOLDED.eq(folded)).fetchOne(TAG.ID);
      ids.add(
          known != null
              ? known
              : db.insertInto(TAG)
                  .set(TAG.NAME, name)
                  .set(TAG.FOLDED, folded)
                  .returningResult(TAG.ID)
                  .fetchSingle()
                  .value1());
    }
    return new ArrayList<>(ids);
  }

  private static @Nullable String kind(@Nullable SourceEntry source) {
    if (source == null) {
      return null;
    }
    if (source instanceof SourceEntry.Noise) {
      return "noise";
    }
    return source instanceof SourceEntry.Oscillator ? "oscillator" : "fm";
  }
}
