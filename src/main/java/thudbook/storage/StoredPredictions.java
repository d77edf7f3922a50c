package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;

import java.util.List;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.recipes.PredictionStore;

/** Predictions and their marks in their table. */
final class StoredPredictions implements PredictionStore {
  // As literals, because SQLite takes a partial index only where it sees the value.
  private static final Condition MARKED = PREDICTION.STALE.eq(DSL.inline(1L));

  private final Connections connections;

  StoredPredictions(Connections connections) {
    this.connections = connections;
  }

  @Override
  public int markOthers(int model) {
    // Two ranges of the index; "not equal" would scan the table.
    Condition others = PREDICTION.MODEL.lt((long) model).or(PREDICTION.MODEL.gt((long) model));
    return connections.write(db -> mark(db, others.and(PREDICTION.STALE.eq(DSL.inline(0L)))));
  }

  @Override
  public List<Marked> marked(long after, int limit) {
    return connections
        .read(
            db ->
                db.select(PREDICTION.RECIPE, PREDICTION.GENERATION, RECIPE_REVISION.DOCUMENT)
                    .from(PREDICTION)
                    .join(RECIPE)
                    .on(RECIPE.ID.eq(PREDICTION.RECIPE))
                    .join(RECIPE_REVISION)
                    .on(
                        RECIPE_REVISION.RECIPE.eq(RECIPE.ID),
                        RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
                    .where(MARKED, PREDICTION.RECIPE.gt(after))
                    .orderBy(PREDICTION.RECIPE)
                    .limit(limit)
                    .fetch())
        .map(row -> new Marked(row.value1(), row.value2(), StoredText.recipe(row.value3())));
  }

  @Override
  public int keep(List<Remade> remade, int model) {
    return connections.write(
        db -> {
          int kept = 0;
          for (Remade one : remade) {
            kept +=
                db.update(PREDICTION)
                    .set(PREDICTION.MODEL, (long) model)
                    .set(PREDICTION.STALE, 0L)
                    .set(PredictionColumns.values(one.prediction()))
                    .where(
                        PREDICTION.RECIPE.eq(one.key()), PREDICTION.GENERATION.eq(one.generation()))
                    .execute();
          }
          return kept;
        });
  }

  /** Adds the row of a new recipe. */
  static void add(DSLContext db, long recipe, @Nullable Prediction prediction) {
    db.insertInto(PREDICTION)
        .set(PREDICTION.RECIPE, recipe)
        .set(PREDICTION.MODEL, (long) Predictor.MODEL_VERSION)
        .set(PREDICTION.GENERATION, 1L)
        .set(PREDICTION.STALE, 0L)
        .set(PredictionColumns.values(prediction))
        .execute();
  }

  /** Marks the recipes that name a gate, by its slug or its id. */
  static void markUsersOf(DSLContext db, Gate gate) {
    mark(
        db,
        PREDICTION.RECIPE.in(
            db.select(RECIPE_STAGE.RECIPE)
                .from(RECIPE_STAGE)
                .where(RECIPE_STAGE.GATE.in(gate.slug(), gate.id().toString()))));
  }

  private static int mark(DSLContext db, Condition which) {
    return db.update(PREDICTION)
        .set(PREDICTION.STALE, 1L)
        .set(PREDICTION.GENERATION, PREDICTION.GENERATION.plus(1L))
        .where(which)
        .execute();
  }
}
