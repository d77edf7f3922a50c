package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.PREDICTION_BEFORE;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Query;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.recipes.PredictionStore;

/** Predictions and their marks in their table. */
final class StoredPredictions implements PredictionStore {
  // As literals, because SQLite takes a partial index only where it sees the value.
  private static final Condition MARKED = PREDICTION.STALE.eq(DSL.inline(1L));

  /** So many changes of gates are remembered with what recipes were before. */
  private static final int REMEMBERED = 20;

  /** What is remembered, in the order of the columns. */
  private static final List<Metric> KEPT =
      List.of(Metric.PEAK_DB, Metric.ATTACK, Metric.HOLD, Metric.RELEASE_40, Metric.THUMP_PEAK);

  private static final List<Field<Double>> BEFORE =
      List.of(
          PREDICTION_BEFORE.PEAK_DB,
          PREDICTION_BEFORE.ATTACK,
          PREDICTION_BEFORE.HOLD,
          PREDICTION_BEFORE.RELEASE_40,
          PREDICTION_BEFORE.THUMP_PEAK);

  private static final List<Field<Double>> NOW =
      List.of(
          PREDICTION.PEAK_DB,
          PREDICTION.ATTACK,
          PREDICTION.HOLD,
          PREDICTION.RELEASE_40,
          PREDICTION.THUMP_PEAK);

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
                db.select(PREDICTION.RECIPE, PREDICTION.GENERATION, REVISION.DOCUMENT)
                    .from(PREDICTION)
                    .join(THING)
                    .on(THING.ID.eq(PREDICTION.RECIPE))
                    .join(REVISION)
                    .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
                    .where(MARKED, PREDICTION.RECIPE.gt(after))
                    .orderBy(PREDICTION.RECIPE)
                    .limit(limit)
                    .fetch())
        .map(
            row ->
                new Marked(row.value1(), row.value2(), () -> Documents.RECIPE.read(row.value3())));
  }

  @Override
  public int keep(List<Remade> remade, int model) {
    if (remade.isEmpty()) {
      return 0;
    }
    Object[][] values =
        remade.stream()
            .map(
                one ->
                    Stream.concat(
                            PredictionColumns.values(one.prediction()).values().stream(),
                            Stream.of((long) model, one.key(), one.generation()))
                        .toArray())
            .toArray(Object[][]::new);
    return connections.write(
        db -> {
          Query update =
              db.update(PREDICTION)
                  .set(PREDICTION.STALE, DSL.inline(0L))
                  .set(PredictionColumns.values(null))
                  .set(PREDICTION.MODEL, 0L)
                  .where(PREDICTION.RECIPE.eq(0L), PREDICTION.GENERATION.eq(0L));
          return Arrays.stream(db.batch(update).bind(values).execute()).sum();
        });
  }

  @Override
  public Optional<Progress> progress(long change) {
    return connections.read(
        db -> {
          int recipes = db.fetchCount(PREDICTION_BEFORE, PREDICTION_BEFORE.CHANGE.eq(change));
          if (recipes == 0) {
            return Optional.empty();
          }
          int waiting =
              db.fetchCount(
                  db.selectOne()
                      .from(PREDICTION)
                      .join(PREDICTION_BEFORE)
                      .on(
                          PREDICTION_BEFORE.CHANGE.eq(change),
                          PREDICTION_BEFORE.RECIPE.eq(PREDICTION.RECIPE))
                      .where(MARKED));
          return Optional.of(new Progress(recipes, waiting));
        });
  }

  @Override
  public List<Moved> moved(long change, int offset, int limit) {
    return connections.read(
        db ->
            db.select(THING.SLUG, THING.TITLE, PREDICTION.STALE)
                .select(PREDICTION_BEFORE.fields())
                .select(NOW)
                .select(PREDICTION.REACH)
                .from(PREDICTION_BEFORE)
                .join(THING)
                .on(THING.ID.eq(PREDICTION_BEFORE.RECIPE))
                .join(PREDICTION)
                .on(PREDICTION.RECIPE.eq(PREDICTION_BEFORE.RECIPE))
                .where(PREDICTION_BEFORE.CHANGE.eq(change))
                .orderBy(THING.TITLE_KEY, THING.ID)
                .limit(limit)
                .offset(offset)
                .fetch(StoredPredictions::moved));
  }

  private static Moved moved(Record row) {
    Map<Metric, Double> before = new EnumMap<>(Metric.class);
    Map<Metric, Double> now = new EnumMap<>(Metric.class);
    for (int i = 0; i < KEPT.size(); i++) {
      put(before, KEPT.get(i), row.get(BEFORE.get(i)));
      put(now, KEPT.get(i), row.get(NOW.get(i)));
    }
    return new Moved(
        row.get(THING.SLUG),
        row.get(THING.TITLE),
        before,
        now,
        PredictionColumns.reach(row.get(PREDICTION_BEFORE.REACH)),
        PredictionColumns.reach(row.get(PREDICTION.REACH)),
        row.get(PREDICTION.STALE) == 1);
  }

  private static void put(Map<Metric, Double> values, Metric metric, @Nullable Double value) {
    if (value != null) {
      values.put(metric, value);
    }
  }

  /**
   * The row of a new recipe.
   *
   * @param stale whether a gate was saved since the prediction was made
   */
  static Map<Field<?>, @Nullable Object> newRow(
      long recipe, @Nullable Prediction prediction, boolean stale) {
    Map<Field<?>, @Nullable Object> row = PredictionColumns.values(prediction);
    row.put(PREDICTION.RECIPE, recipe);
    row.put(PREDICTION.MODEL, (long) Predictor.MODEL_VERSION);
    row.put(PREDICTION.GENERATION, 1L);
    row.put(PREDICTION.STALE, stale ? 1L : 0L);
    return row;
  }

  /** Puts the prediction of a new revision in place of the one before. */
  static void replace(DSLContext db, long recipe, @Nullable Prediction prediction, boolean stale) {
    db.update(PREDICTION)
        .set(PREDICTION.MODEL, (long) Predictor.MODEL_VERSION)
        .set(PREDICTION.GENERATION, PREDICTION.GENERATION.plus(1L))
        .set(PREDICTION.STALE, stale ? 1L : 0L)
        .set(PredictionColumns.values(prediction))
        .where(PREDICTION.RECIPE.eq(recipe))
        .execute();
  }

  /** Marks one recipe. */
  static void mark(DSLContext db, long recipe) {
    mark(db, PREDICTION.RECIPE.eq(recipe));
  }

  /**
   * Marks the recipes that name a gate, and remembers what they were for as long as the latest
   * changes of gates.
   */
  static void markUsersOf(DSLContext db, UUID gate, long change) {
    Condition uses =
        PREDICTION.RECIPE.in(
            db.select(RECIPE_STAGE.RECIPE)
                .from(RECIPE_STAGE)
                .where(RECIPE_STAGE.GATE.in(StoredThings.namesOf(Documents.GATE, gate))));
    db.insertInto(PREDICTION_BEFORE, PREDICTION_BEFORE.fields())
        .select(
            db.select(DSL.val(change), PREDICTION.RECIPE, PREDICTION.REACH)
                .select(NOW)
                .from(PREDICTION)
                .join(THING)
                .on(THING.ID.eq(PREDICTION.RECIPE), THING.BINNED_AT.isNull())
                .where(uses))
        .onConflictDoNothing()
        .execute();
    Long oldest =
        db.selectDistinct(PREDICTION_BEFORE.CHANGE)
            .from(PREDICTION_BEFORE)
            .orderBy(PREDICTION_BEFORE.CHANGE.desc())
            .limit(1)
            .offset(REMEMBERED)
            .fetchOne(PREDICTION_BEFORE.CHANGE);
    if (oldest != null) {
      db.deleteFrom(PREDICTION_BEFORE).where(PREDICTION_BEFORE.CHANGE.le(oldest)).execute();
    }
    mark(db, uses);
  }

  private static int mark(DSLContext db, Condition which) {
    return db.update(PREDICTION)
        .set(PREDICTION.STALE, 1L)
        .set(PREDICTION.GENERATION, PREDICTION.GENERATION.plus(1L))
        .where(which)
        .execute();
  }
}
