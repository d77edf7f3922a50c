package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE_PARENT;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Binning;
import thudbook.changes.Derived;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.predictions.Prediction;
import thudbook.recipes.Predicted;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/** What hangs on the recipes of an act: tags, stages, what they are searched by, predictions. */
final class RecipeRows extends SideRows<Recipe> {
  private final DSLContext db;
  private final NewRows rows;
  private final Tags tags;
  private final long studio;

  /** Begins an act, before its gates are written. */
  RecipeRows(DSLContext db, NewRows rows, long change) {
    this.db = db;
    this.rows = rows;
    this.tags = new Tags(db);
    this.studio = StoredChanges.state(db, Documents.GATE);
  }

  @Override
  void clear(List<Long> things) {
    db.deleteFrom(RECIPE_TAG).where(RECIPE_TAG.RECIPE.in(things)).execute();
    db.deleteFrom(RECIPE_STAGE).where(RECIPE_STAGE.RECIPE.in(things)).execute();
    db.deleteFrom(RECIPE_PARENT).where(RECIPE_PARENT.RECIPE.in(things)).execute();
    FactRows.delete(db, things);
  }

  @Override
  void add(long id, Write<Recipe> write) {
    Recipe recipe = write.thing();
    List<Long> tagged = tags.keys(recipe.tags());
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
    if (write.derived() != Derived.AS_BEFORE) {
      predict(id, write);
    }
  }

  private void predict(long id, Write<Recipe> write) {
    // What was predicted with gates that are not those of today is marked.
    Predicted predicted =
        write.derived() instanceof Predicted known ? known : new Predicted(null, -1);
    @Nullable Prediction prediction = predicted.prediction();
    boolean overtaken = predicted.studio() != studio;
    if (write.version() == null) {
      rows.add(PREDICTION, StoredPredictions.newRow(id, prediction, overtaken));
    } else {
      StoredPredictions.replace(db, id, prediction, overtaken);
    }
  }

  @Override
  void moved(long thing, Binning binning) {
    if (!binning.intoBin()) {
      // Gates may have come and gone while it lay there.
      StoredPredictions.mark(db, thing);
    }
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
