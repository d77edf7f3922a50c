package thudbook.storage;

import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE_FACT;
import static thudbook.storage.schema.Tables.RECIPE_PARENT;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.TAG;
import static thudbook.storage.schema.Tables.THING;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.library.RecipeFacts;
import thudbook.library.Words;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.StageEntry;

/** Whether the columns and the prediction of recipes follow from their documents. */
final class VerifiedRecipes {
  private final List<String> wrong;
  private final GateTexts texts = new GateTexts();
  private long predictions;

  /**
   * @param wrong takes what is found
   */
  VerifiedRecipes(List<String> wrong) {
    this.wrong = wrong;
  }

  /** How many predictions were made again and compared. */
  long predictions() {
    return predictions;
  }

  /** Looks at the recipes behind a key, all in one state, and returns their keys. */
  List<Long> check(DSLContext db, long after) {
    List<Record> rows = rows(db, after);
    List<Long> keys = rows.stream().map(row -> row.get(THING.ID)).toList();
    Map<Long, List<String>> tags = tags(db, keys);
    Map<Long, List<String>> stages = stages(db, keys);
    Things<Gate> studio = texts.studio(db);
    for (Record row : rows) {
      long key = row.get(THING.ID);
      check(
          db, row, tags.getOrDefault(key, List.of()), stages.getOrDefault(key, List.of()), studio);
    }
    return keys;
  }

  private static List<Record> rows(DSLContext db, long after) {
    List<Field<?>> columns =
        new ArrayList<>(List.of(THING.ID, THING.SLUG, REVISION.DOCUMENT, RECIPE_PARENT.PARENT));
    columns.addAll(List.of(RECIPE_FACT.fields()));
    columns.add(PREDICTION.STALE);
    columns.add(PREDICTION.MODEL);
    columns.addAll(PredictionColumns.all());
    return db.select(columns)
        .from(THING)
        .leftJoin(REVISION)
        .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
        .leftJoin(RECIPE_FACT)
        .on(RECIPE_FACT.RECIPE.eq(THING.ID))
        .leftJoin(RECIPE_PARENT)
        .on(RECIPE_PARENT.RECIPE.eq(THING.ID))
        .leftJoin(PREDICTION)
        .on(PREDICTION.RECIPE.eq(THING.ID))
        .where(THING.NOUN.eq(Documents.RECIPE.word()), THING.ID.gt(after))
        .orderBy(THING.ID)
        .limit(Verification.BATCH)
        .fetch();
  }

  private static Map<Long, List<String>> tags(DSLContext db, List<Long> keys) {
    return db.select(RECIPE_TAG.RECIPE, TAG.FOLDED)
        .from(RECIPE_TAG)
        .join(TAG)
        .on(TAG.ID.eq(RECIPE_TAG.TAG))
        .where(RECIPE_TAG.RECIPE.in(keys))
        .orderBy(RECIPE_TAG.RECIPE, RECIPE_TAG.POSITION)
        .fetchGroups(RECIPE_TAG.RECIPE, TAG.FOLDED);
  }

  private static Map<Long, List<String>> stages(DSLContext db, List<Long> keys) {
    return db.selectFrom(RECIPE_STAGE)
        .where(RECIPE_STAGE.RECIPE.in(keys))
        .orderBy(RECIPE_STAGE.RECIPE, RECIPE_STAGE.POSITION)
        .fetchGroups(
            RECIPE_STAGE.RECIPE,
            row -> words(row.get(RECIPE_STAGE.GATE), row.get(RECIPE_STAGE.CHANNEL)));
  }

  private void check(
      DSLContext db, Record row, List<String> tags, List<String> stages, Things<Gate> studio) {
    String name = "recipe " + row.get(THING.SLUG) + ": ";
    Recipe recipe;
    try {
      recipe = Documents.RECIPE.read(row.get(REVISION.DOCUMENT));
    } catch (Refusal e) {
      return; // told where all things are looked at
    }
    compare(name, "tags", tags, recipe.tags().stream().map(Words::fold).distinct().toList());
    compare(
        name,
        "stages",
        stages,
        recipe.stages().stream()
            .map((StageEntry stage) -> words(stage.gate(), stage.channel()))
            .toList());
    compare(name, "parent", row.get(RECIPE_PARENT.PARENT), recipe.derivedFrom());
    facts(db, name, row, recipe);
    Long stale = row.get(PREDICTION.STALE);
    if (stale == null) {
      wrong.add(name + "it has no row for its prediction");
    } else if (stale == 0 && row.get(PREDICTION.MODEL) == Predictor.MODEL_VERSION) {
      // What another version of the model made is marked by the next start.
      predictions++;
      if (!follows(
          row, Resolution.of(recipe, studio).complete().map(Predictor::predict).orElse(null))) {
        wrong.add(name + "its prediction is not what is predicted today, and not marked");
      }
    }
  }

  /** What is searched by. */
  private void facts(DSLContext db, String name, Record row, Recipe recipe) {
    if (row.get(RECIPE_FACT.RECIPE) == null) {
      wrong.add(name + "it has no row of what it is searched by");
      return;
    }
    RecipeFacts facts = RecipeFacts.of(recipe);
    FactRows.columns(recipe, facts)
        .forEach((column, value) -> compare(name, column.getName(), row.get(column), value));
    if (!FactRows.isIndexed(db, row.get(THING.ID), facts)) {
      wrong.add(name + "its words are not found in the index");
    }
  }

  private void compare(String name, String what, @Nullable Object kept, @Nullable Object written) {
    if (!Objects.equals(kept, written)) {
      wrong.add(name + "its " + what + " is kept as " + kept + ", the document says " + written);
    }
  }

  private static boolean follows(Record row, @Nullable Prediction fresh) {
    return PredictionColumns.values(fresh).entrySet().stream()
        .allMatch(column -> same(row.get(column.getKey()), column.getValue()));
  }

  /** Equal bit for bit, but for the sign of a zero, which the database does not keep. */
  private static boolean same(@Nullable Object kept, @Nullable Object fresh) {
    if (kept instanceof Double one && fresh instanceof Double other) {
      return one.doubleValue() == other.doubleValue();
    }
    if (kept instanceof byte[] some && fresh instanceof byte[] others) {
      return Arrays.equals(some, others);
    }
    return Objects.equals(kept, fresh);
  }

  private static String words(@Nullable String gate, @Nullable String channel) {
    return (gate == null ? "no gate" : gate) + ", " + (channel == null ? "no channel" : channel);
  }
}
