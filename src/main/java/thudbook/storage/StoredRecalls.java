package thudbook.storage;

import static thudbook.storage.schema.Tables.RECALL;
import static thudbook.storage.schema.Tables.THING;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.SelectConditionStep;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.sessions.Recall;
import thudbook.sessions.RecallStore;
import thudbook.storage.schema.tables.Thing;

/** Recalls in their table. */
final class StoredRecalls implements RecallStore {
  private static final Thing SESSION = THING.as("session");

  private final Connections connections;

  StoredRecalls(Connections connections) {
    this.connections = connections;
  }

  @Override
  public boolean keep(Recall recall) {
    Long finished = recall.finishedAt() == null ? null : recall.finishedAt().toEpochMilli();
    return connections.write(
        db -> {
          Long recipe =
              db.select(THING.ID)
                  .from(THING)
                  .where(StoredThings.is(Documents.RECIPE, recall.recipe().toString()))
                  .fetchOne(THING.ID);
          if (recipe == null) {
            return false;
          }
          return db.insertInto(RECALL)
                  .set(RECALL.UUID, recall.id().toString())
                  .set(RECALL.RECIPE, recipe)
                  .set(RECALL.REVISION, (long) recall.revision())
                  .set(RECALL.SESSION, session(db, recall.session()))
                  .set(RECALL.AUTHOR, recall.author().name())
                  .set(RECALL.BEGUN_AT, recall.begunAt().toEpochMilli())
                  .set(RECALL.FINISHED_AT, finished)
                  .set(RECALL.STEP, recall.step())
                  .set(RECALL.MARKS, recall.marks())
                  .onConflict(RECALL.UUID)
                  .doUpdate()
                  .set(RECALL.FINISHED_AT, finished)
                  .set(RECALL.STEP, recall.step())
                  .set(RECALL.MARKS, recall.marks())
                  .where(
                      RECALL.RECIPE.eq(recipe),
                      RECALL.STEP.le(recall.step()),
                      RECALL.FINISHED_AT.isNull())
                  .execute()
              > 0;
        });
  }

  private static @Nullable Long session(DSLContext db, @Nullable UUID session) {
    return session == null
        ? null
        : db.select(THING.ID)
            .from(THING)
            .where(StoredThings.is(Documents.SESSION, session.toString()))
            .fetchOne(THING.ID);
  }

  @Override
  public Optional<Recall> find(UUID id) {
    return connections
        .read(db -> select(db, RECALL.UUID.eq(id.toString())).fetchOptional())
        .map(StoredRecalls::recall);
  }

  @Override
  public Optional<Recall> unfinished(UUID recipe, @Nullable UUID session, Author author) {
    Condition of = session == null ? RECALL.SESSION.isNull() : SESSION.UUID.eq(session.toString());
    return connections
        .read(
            db ->
                select(
                        db,
                        THING
                            .UUID
                            .eq(recipe.toString())
                            .and(of)
                            .and(RECALL.AUTHOR.eq(author.name()))
                            .and(RECALL.FINISHED_AT.isNull()))
                    .orderBy(RECALL.ID.desc())
                    .limit(1)
                    .fetchOptional())
        .map(StoredRecalls::recall);
  }

  @Override
  public Optional<String> numbered(String beginning) {
    if (!beginning.matches("[0-9a-f]{4,8}")) {
      return Optional.empty();
    }
    List<String> slugs =
        connections.read(
            db ->
                db.select(THING.SLUG)
                    .from(THING)
                    .where(
                        THING.NOUN.eq(Documents.RECIPE.word()),
                        THING.BINNED_AT.isNull(),
                        THING.UUID.startsWith(beginning))
                    .limit(2)
                    .fetch(THING.SLUG));
    return slugs.size() == 1 ? Optional.of(slugs.get(0)) : Optional.empty();
  }

  @Override
  public List<Use> uses(UUID recipe, int limit) {
    return connections.read(
        db ->
            select(db, THING.UUID.eq(recipe.toString()).and(RECALL.FINISHED_AT.isNotNull()))
                .orderBy(RECALL.FINISHED_AT.desc(), RECALL.ID.desc())
                .limit(limit)
                .fetch(
                    row ->
                        new Use(
                            Instant.ofEpochMilli(row.get(RECALL.FINISHED_AT)),
                            new Author(row.get(RECALL.AUTHOR)),
                            Math.toIntExact(row.get(RECALL.REVISION)),
                            row.get(SESSION.SLUG),
                            row.get(SESSION.TITLE))));
  }

  private static SelectConditionStep<? extends Record> select(DSLContext db, Condition which) {
    return db.select(RECALL.fields())
        .select(THING.UUID, SESSION.UUID, SESSION.SLUG, SESSION.TITLE)
        .from(RECALL)
        .join(THING)
        .on(THING.ID.eq(RECALL.RECIPE))
        .leftJoin(SESSION)
        .on(SESSION.ID.eq(RECALL.SESSION))
        .where(which);
  }

  private static Recall recall(Record row) {
    String session = row.get(SESSION.UUID);
    Long finished = row.get(RECALL.FINISHED_AT);
    return new Recall(
        UUID.fromString(row.get(RECALL.UUID)),
        UUID.fromString(row.get(THING.UUID)),
        Math.toIntExact(row.get(RECALL.REVISION)),
        session == null ? null : UUID.fromString(session),
        new Author(row.get(RECALL.AUTHOR)),
        Instant.ofEpochMilli(row.get(RECALL.BEGUN_AT)),
        finished == null ? null : Instant.ofEpochMilli(finished),
        row.get(RECALL.STEP),
        row.get(RECALL.MARKS));
  }
}
