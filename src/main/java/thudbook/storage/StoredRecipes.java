package thudbook.storage;

import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_PARENT;
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
import org.jooq.Select;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.Slugs;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;

/** Recipes in their tables. */
final class StoredRecipes implements RecipeStore {
  private final Connections connections;
  private final ReadTexts<Recipe> read = new ReadTexts<>(StoredText::recipe);

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
        .map(this::stored);
  }

  @Override
  public boolean slugTaken(String slug) {
    return Slugs.isKept(slug)
        || connections.read(db -> db.fetchExists(RECIPE_SLUG, RECIPE_SLUG.SLUG.eq(slug)));
  }

  @Override
  public List<Revision<Recipe>> revisions(UUID recipe, int below, int limit) {
    Condition which = below == 0 ? DSL.noCondition() : RECIPE_REVISION.NUMBER.lt((long) below);
    return connections
        .read(
            db ->
                revisions(db, recipe, which)
                    .orderBy(RECIPE_REVISION.NUMBER.desc())
                    .limit(limit)
                    .fetch())
        .map(this::revision);
  }

  @Override
  public Optional<Revision<Recipe>> revision(UUID recipe, int number) {
    return connections
        .read(db -> revisions(db, recipe, RECIPE_REVISION.NUMBER.eq((long) number)).fetchOptional())
        .map(this::revision);
  }

  @Override
  public List<Stored> binned(int limit) {
    return connections
        .read(
            db ->
                select(db, RECIPE.BINNED_AT.isNotNull())
                    .orderBy(RECIPE.BINNED_AT.desc(), RECIPE.ID.desc())
                    .limit(limit)
                    .fetch())
        .map(this::stored);
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
                .where(RECIPE_STAGE.GATE.in(StoredGates.namesOf(gate)), RECIPE.BINNED_AT.isNull())
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
  public List<Variation> variations(UUID recipe, int limit) {
    return connections.read(
        db ->
            db.select(RECIPE.SLUG, RECIPE.TITLE)
                .from(RECIPE_PARENT)
                .join(RECIPE)
                .on(RECIPE.ID.eq(RECIPE_PARENT.RECIPE))
                .where(
                    RECIPE_PARENT.PARENT.in(namesOf(recipe)),
                    RECIPE.UUID.ne(recipe.toString()),
                    RECIPE.BINNED_AT.isNull())
                .orderBy(RECIPE.TITLE_KEY, RECIPE.ID)
                .limit(limit)
                .fetch(row -> new Variation(row.value1(), row.value2())));
  }

  /** Every name under which other recipes may know one: its slugs, old ones too, and its id. */
  private static Select<Record1<String>> namesOf(UUID recipe) {
    String id = recipe.toString();
    return DSL.select(RECIPE_SLUG.SLUG)
        .from(RECIPE_SLUG)
        .join(RECIPE)
        .on(RECIPE.ID.eq(RECIPE_SLUG.RECIPE))
        .where(RECIPE.UUID.eq(id))
        .unionAll(DSL.select(DSL.val(id)));
  }

  private static SelectConditionStep<? extends Record> revisions(
      DSLContext db, UUID recipe, Condition which) {
    return db.select(RECIPE_REVISION.NUMBER, RECIPE_REVISION.DOCUMENT)
        .select(CHANGE.fields())
        .from(RECIPE_REVISION)
        .join(RECIPE)
        .on(RECIPE.ID.eq(RECIPE_REVISION.RECIPE))
        .join(CHANGE)
        .on(CHANGE.ID.eq(RECIPE_REVISION.CHANGE))
        .where(RECIPE.UUID.eq(recipe.toString()), which);
  }

  private Revision<Recipe> revision(Record row) {
    String document = row.get(RECIPE_REVISION.DOCUMENT);
    return new Revision<>(
        Math.toIntExact(row.get(RECIPE_REVISION.NUMBER)),
        Instant.ofEpochMilli(row.get(CHANGE.AT)),
        new Author(row.get(CHANGE.AUTHOR)),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.ID),
        read.of(document),
        document);
  }

  private static SelectConditionStep<? extends Record> select(DSLContext db, Condition condition) {
    return db.select(
            RECIPE.VERSION,
            RECIPE.HEAD,
            RECIPE.AUTHOR,
            RECIPE.CREATED_AT,
            RECIPE.CHANGED_AT,
            RECIPE.BINNED_AT,
            RECIPE_REVISION.DOCUMENT)
        .from(RECIPE)
        .join(RECIPE_REVISION)
        .on(RECIPE_REVISION.RECIPE.eq(RECIPE.ID), RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
        .where(condition);
  }

  private Stored stored(Record row) {
    Long binned = row.get(RECIPE.BINNED_AT);
    String document = row.get(RECIPE_REVISION.DOCUMENT);
    return new Stored(
        read.of(document),
        row.get(RECIPE.VERSION),
        Math.toIntExact(row.get(RECIPE.HEAD)),
        new Author(row.get(RECIPE.AUTHOR)),
        Instant.ofEpochMilli(row.get(RECIPE.CREATED_AT)),
        Instant.ofEpochMilli(row.get(RECIPE.CHANGED_AT)),
        binned == null ? null : Instant.ofEpochMilli(binned),
        document);
  }
}
