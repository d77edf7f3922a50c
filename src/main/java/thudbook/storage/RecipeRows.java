package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_PARENT;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.Words;
import thudbook.recipes.Act.RecipeWrite;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/** The rows of the recipes of an act: written anew, or with another revision. */
final class RecipeRows {
  private final DSLContext db;
  private final Author author;
  private final Instant at;
  private final long change;
  private final boolean overtaken;
  private final NewRows rows;
  private final Tags tags;

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
    this.rows = new NewRows(db);
    this.tags = new Tags(db);
  }

  /** Writes new recipes, and the next revisions of those whose version has been checked. */
  void write(List<RecipeWrite> writes) {
    long key = largestKey();
    for (RecipeWrite write : writes) {
      if (write.version() == null) {
        add(++key, write);
      }
    }
    List<RecipeWrite> changed = writes.stream().filter(write -> write.version() != null).toList();
    for (List<RecipeWrite> some : Batches.of(changed)) {
      change(some);
    }
    rows.write();
  }

  /** Recipes are never taken away, so keys that follow it are free. */
  private long largestKey() {
    return db.select(DSL.coalesce(DSL.max(RECIPE.ID), 0L)).from(RECIPE).fetchSingle().value1();
  }

  private void add(long id, RecipeWrite write) {
    Recipe recipe = write.recipe();
    Map<Field<?>, @Nullable Object> row = columns(recipe);
    row.put(RECIPE.ID, id);
    row.put(RECIPE.UUID, recipe.id().toString());
    row.put(RECIPE.AUTHOR, author.name());
    row.put(RECIPE.VERSION, 1L);
    row.put(RECIPE.HEAD, 1L);
    row.put(RECIPE.CREATED_AT, at.toEpochMilli());
    row.put(RECIPE.CHANGED_AT, at.toEpochMilli());
    rows.add(RECIPE, row);
    rows.add(RECIPE_SLUG, Map.of(RECIPE_SLUG.SLUG, recipe.slug(), RECIPE_SLUG.RECIPE, id));
    parts(id, write, 1, null);
    rows.add(PREDICTION, StoredPredictions.newRow(id, write.prediction(), overtaken));
  }

  private void change(List<RecipeWrite> writes) {
    List<String> uuids = writes.stream().map(write -> write.recipe().id().toString()).toList();
    Map<String, Record> before =
        db.select(
                RECIPE.UUID,
                RECIPE.ID,
                RECIPE.SLUG,
                RECIPE.HEAD,
                RECIPE.CREATED_AT,
                RECIPE_REVISION.ID)
            .from(RECIPE)
            .join(RECIPE_REVISION)
            .on(RECIPE_REVISION.RECIPE.eq(RECIPE.ID), RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
            .where(RECIPE.UUID.in(uuids))
            .fetchMap(RECIPE.UUID, row -> row);
    List<Long> ids = before.values().stream().map(row -> row.get(RECIPE.ID)).toList();
    db.deleteFrom(RECIPE_TAG).where(RECIPE_TAG.RECIPE.in(ids)).execute();
    db.deleteFrom(RECIPE_STAGE).where(RECIPE_STAGE.RECIPE.in(ids)).execute();
    db.deleteFrom(RECIPE_PARENT).where(RECIPE_PARENT.RECIPE.in(ids)).execute();
    FactRows.delete(db, ids);
    for (RecipeWrite write : writes) {
      change(write, Objects.requireNonNull(before.get(write.recipe().id().toString())));
    }
  }

  private void change(RecipeWrite write, Record before) {
    Recipe recipe = write.recipe();
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
    if (!recipe.slug().equals(before.get(RECIPE.SLUG))) {
      // It may be an old one of its own.
      db.insertInto(RECIPE_SLUG)
          .set(RECIPE_SLUG.SLUG, recipe.slug())
          .set(RECIPE_SLUG.RECIPE, id)
          .onConflictDoNothing()
          .execute();
    }
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

  /** What hangs on a recipe: the revision, tags, stages and what it is searched by. */
  private void parts(long id, RecipeWrite write, long number, @Nullable Long parent) {
    Recipe recipe = write.recipe();
    List<Long> tagged = tags.keys(recipe.tags());
    Map<Field<?>, @Nullable Object> revision = new HashMap<>();
    revision.put(RECIPE_REVISION.RECIPE, id);
    revision.put(RECIPE_REVISION.NUMBER, number);
    revision.put(RECIPE_REVISION.PARENT, parent);
    revision.put(RECIPE_REVISION.CHANGE, change);
    revision.put(RECIPE_REVISION.SHA256, StoredText.sha256(write.document()));
    revision.put(RECIPE_REVISION.DOCUMENT, write.document());
    revision.put(RECIPE_REVISION.TAG_IDS, tagged.toString());
    rows.add(RECIPE_REVISION, revision);
    for (int i = 0; i < tagged.size(); i++) {
      rows.add(
          RECIPE_TAG,
          Map.of(
              RECIPE_TAG.TAG, tagged.get(i), RECIPE_TAG.RECIPE, id, RECIPE_TAG.POSITION, i + 1L));
    }
    if (recipe.derivedFrom() != null) {
      rows.add(
          RECIPE_PARENT,
          Map.of(RECIPE_PARENT.RECIPE, id, RECIPE_PARENT.PARENT, recipe.derivedFrom()));
    }
    for (int i = 0; i < recipe.stages().size(); i++) {
      StageEntry stage = recipe.stages().get(i);
      Map<Field<?>, @Nullable Object> row = new HashMap<>();
      row.put(RECIPE_STAGE.RECIPE, id);
      row.put(RECIPE_STAGE.POSITION, i + 1L);
      row.put(RECIPE_STAGE.GATE, stage.gate());
      row.put(RECIPE_STAGE.CHANNEL, stage.channel());
      rows.add(RECIPE_STAGE, row);
    }
    FactRows.add(rows, id, recipe);
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
