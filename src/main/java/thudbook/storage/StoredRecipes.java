package thudbook.storage;

import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.ResultQuery;
import org.jooq.Select;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.recipes.RecipeStore;

/** Recipes in their tables. */
final class StoredRecipes implements RecipeStore {
  private final Connections connections;

  StoredRecipes(Connections connections) {
    this.connections = connections;
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return connections
        .read(
            db -> {
              Optional<? extends Record> bySlug =
                  select(
                          db,
                          RECIPE.ID.eq(
                              db.select(RECIPE_SLUG.RECIPE)
                                  .from(RECIPE_SLUG)
                                  .where(RECIPE_SLUG.SLUG.eq(slugOrId))))
                      .fetchOptional();
              return bySlug.isPresent()
                  ? bySlug
                  : select(db, RECIPE.UUID.eq(slugOrId.toLowerCase(Locale.ROOT))).fetchOptional();
            })
        .map(StoredRecipes::stored);
  }

  @Override
  public boolean slugTaken(String slug) {
    return connections.read(db -> db.fetchExists(RECIPE_SLUG, RECIPE_SLUG.SLUG.eq(slug)));
  }

  @Override
  public void add(
      List<NewGate> gates, List<NewRecipe> recipes, Author author, Instant at, String what) {
    connections.write(
        db -> {
          Clashes.refuse(db, gates, recipes);
          long change =
              db.insertInto(CHANGE)
                  .set(CHANGE.AT, at.toEpochMilli())
                  .set(CHANGE.AUTHOR, author.name())
                  .set(CHANGE.WHAT, what)
                  .returningResult(CHANGE.ID)
                  .fetchSingle()
                  .value1();
          for (NewGate gate : gates) {
            StoredGates.add(db, gate, change);
            StoredPredictions.markUsersOf(db, gate.gate());
          }
          for (NewRecipe recipe : recipes) {
            NewRecipeRows.insert(db, recipe, author, at, change);
          }
          return change;
        });
  }

  @Override
  public List<Use> using(UUID gate) {
    return connections.read(
        db ->
            db
                .select(RECIPE.SLUG, RECIPE.TITLE, RECIPE_STAGE.CHANNEL)
                .from(RECIPE_STAGE)
                .join(RECIPE)
                .on(RECIPE.ID.eq(RECIPE_STAGE.RECIPE))
                .where(RECIPE_STAGE.GATE.in(namesOf(gate)), RECIPE.BINNED_AT.isNull())
                .orderBy(RECIPE.TITLE_KEY, RECIPE.ID, RECIPE_STAGE.POSITION)
                .fetchGroups(RECIPE.SLUG)
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
  public boolean isEmpty() {
    return connections.read(db -> !db.fetchExists(CHANGE));
  }

  /** What a stage may call a gate: its slug, an old slug, its id. */
  private static Select<Record1<String>> namesOf(UUID gate) {
    String id = gate.toString();
    return DSL.select(GATE_SLUG.SLUG)
        .from(GATE_SLUG)
        .join(GATE)
        .on(GATE.ID.eq(GATE_SLUG.GATE))
        .where(GATE.UUID.eq(id))
        .unionAll(DSL.select(DSL.val(id)));
  }

  private static ResultQuery<? extends Record> select(DSLContext db, Condition condition) {
    return db.select(
            RECIPE.VERSION,
            RECIPE.AUTHOR,
            RECIPE.CREATED_AT,
            RECIPE.CHANGED_AT,
            RECIPE_REVISION.DOCUMENT)
        .from(RECIPE)
        .join(RECIPE_REVISION)
        .on(RECIPE_REVISION.RECIPE.eq(RECIPE.ID), RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
        .where(condition);
  }

  private static Stored stored(Record row) {
    String document = row.get(RECIPE_REVISION.DOCUMENT);
    return new Stored(
        StoredText.recipe(document),
        row.get(RECIPE.VERSION),
        new Author(row.get(RECIPE.AUTHOR)),
        Instant.ofEpochMilli(row.get(RECIPE.CREATED_AT)),
        Instant.ofEpochMilli(row.get(RECIPE.CHANGED_AT)),
        document);
  }
}
