package thudbook.storage;

import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_PARENT;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;
import static thudbook.storage.schema.Tables.TAG;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.Words;
import thudbook.recipes.Act.RecipeWrite;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/** The rows of a recipe: written anew, or with another revision. */
final class RecipeRows {
  private final DSLContext db;
  private final Author author;
  private final Instant at;
  private final long change;
  private final boolean overtaken;

  /**
   * Writes the recipes of an act.
   *
   * @param overtaken whether a gate was saved since their predictions were made
   */
  RecipeRows(DSLContext db, Author author, Instant at, long change, boolean overtaken) {
    this.db = db;
    this.author = author;
    this.at = at;
    this.change = change;
    this.overtaken = overtaken;
  }

  /** Writes a new recipe, or the next revision of one whose version has been checked. */
  void write(RecipeWrite write) {
    if (write.version() == null) {
      add(write);
    } else {
      change(write);
    }
  }

  private void add(RecipeWrite write) {
    Recipe recipe = write.recipe();
    long id =
        db.insertInto(RECIPE)
            .set(RECIPE.UUID, recipe.id().toString())
            .set(columns(recipe))
            .set(RECIPE.AUTHOR, author.name())
            .set(RECIPE.VERSION, 1L)
            .set(RECIPE.HEAD, 1L)
            .set(RECIPE.CREATED_AT, at.toEpochMilli())
            .set(RECIPE.CHANGED_AT, at.toEpochMilli())
            .returningResult(RECIPE.ID)
            .fetchSingle()
            .value1();
    parts(id, write, 1, null);
    StoredPredictions.add(db, id, write.prediction(), overtaken);
  }

  private void change(RecipeWrite write) {
    Recipe recipe = write.recipe();
    Record before =
        db.select(RECIPE.ID, RECIPE.HEAD, RECIPE.CREATED_AT, RECIPE_REVISION.ID)
            .from(RECIPE)
            .join(RECIPE_REVISION)
            .on(RECIPE_REVISION.RECIPE.eq(RECIPE.ID), RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
            .where(RECIPE.UUID.eq(recipe.id().toString()))
            .fetchSingle();
    long id = before.get(RECIPE.ID);
    long number = before.get(RECIPE.HEAD) + 1;
    db.update(RECIPE)
        .set(columns(recipe))
        .set(RECIPE.VERSION, RECIPE.VERSION.plus(1L))
        .set(RECIPE.HEAD, number)
        // A clock that was set back must not make a recipe older than it is.
        .set(RECIPE.CHANGED_AT, Math.max(at.toEpochMilli(), before.get(RECIPE.CREATED_AT)))
        .where(RECIPE.ID.eq(id))
        .execute();
    db.deleteFrom(RECIPE_TAG).where(RECIPE_TAG.RECIPE.eq(id)).execute();
    db.deleteFrom(RECIPE_STAGE).where(RECIPE_STAGE.RECIPE.eq(id)).execute();
    db.deleteFrom(RECIPE_PARENT).where(RECIPE_PARENT.RECIPE.eq(id)).execute();
    FactRows.delete(db, id);
    parts(id, write, number, before.get(RECIPE_REVISION.ID));
    if (!write.sameSound()) {
      StoredPredictions.replace(db, id, write.prediction(), overtaken);
    }
  }

  private static Map<Field<?>, @Nullable Object> columns(Recipe recipe) {
    Map<Field<?>, @Nullable Object> columns = new HashMap<>();
    columns.put(RECIPE.SLUG, recipe.slug());
    columns.put(RECIPE.TITLE, recipe.title());
    columns.put(RECIPE.TITLE_KEY, Words.fold(recipe.title()));
    columns.put(RECIPE.MADE_BY, recipe.by());
    columns.put(RECIPE.HEARD, recipe.heard());
    columns.put(RECIPE.SOURCE_KIND, kind(recipe.source()));
    return columns;
  }

  /** What hangs on a recipe: its names, the revision, tags and stages. */
  private void parts(long id, RecipeWrite write, long number, @Nullable Long parent) {
    Recipe recipe = write.recipe();
    db.insertInto(RECIPE_SLUG)
        .set(RECIPE_SLUG.SLUG, recipe.slug())
        .set(RECIPE_SLUG.RECIPE, id)
        .onConflictDoNothing()
        .execute();
    List<Long> tags = tags(recipe.tags());
    db.insertInto(RECIPE_REVISION)
        .set(RECIPE_REVISION.RECIPE, id)
        .set(RECIPE_REVISION.NUMBER, number)
        .set(RECIPE_REVISION.PARENT, parent)
        .set(RECIPE_REVISION.CHANGE, change)
        .set(RECIPE_REVISION.SHA256, StoredText.sha256(write.document()))
        .set(RECIPE_REVISION.DOCUMENT, write.document())
        .set(RECIPE_REVISION.TAG_IDS, tags.toString())
        .execute();
    for (int i = 0; i < tags.size(); i++) {
      db.insertInto(RECIPE_TAG)
          .set(RECIPE_TAG.TAG, tags.get(i))
          .set(RECIPE_TAG.RECIPE, id)
          .set(RECIPE_TAG.POSITION, i + 1L)
          .execute();
    }
    if (recipe.derivedFrom() != null) {
      db.insertInto(RECIPE_PARENT)
          .set(RECIPE_PARENT.RECIPE, id)
          .set(RECIPE_PARENT.PARENT, recipe.derivedFrom())
          .execute();
    }
    FactRows.write(db, id, recipe);
    for (int i = 0; i < recipe.stages().size(); i++) {
      StageEntry stage = recipe.stages().get(i);
      db.insertInto(RECIPE_STAGE)
          .set(RECIPE_STAGE.RECIPE, id)
          .set(RECIPE_STAGE.POSITION, i + 1L)
          .set(RECIPE_STAGE.GATE, stage.gate())
          .set(RECIPE_STAGE.CHANNEL, stage.channel())
          .execute();
    }
  }

  /** The keys of tags in the order of the text; new ones are added. */
  private List<Long> tags(List<String> names) {
    Set<Long> ids = new LinkedHashSet<>();
    for (String name : names) {
      String folded = Words.fold(name);
      Record known = db.select(TAG.ID, TAG.NAME).from(TAG).where(TAG.FOLDED.eq(folded)).fetchOne();
      if (known == null) {
        ids.add(
            db.insertInto(TAG)
                .set(TAG.NAME, name)
                .set(TAG.FOLDED, folded)
                .returningResult(TAG.ID)
                .fetchSingle()
                .value1());
        continue;
      }
      ids.add(known.get(TAG.ID));
      if (!known.get(TAG.NAME).equals(name)) {
        // The spelling that was written last counts.
        db.update(TAG).set(TAG.NAME, name).where(TAG.FOLDED.eq(folded)).execute();
      }
    }
    return new ArrayList<>(ids);
  }

  static @Nullable String kind(@Nullable SourceEntry source) {
    if (source == null) {
      return null;
    }
    if (source instanceof SourceEntry.Noise) {
      return "noise";
    }
    return source instanceof SourceEntry.Oscillator ? "oscillator" : "fm";
  }
}
