package thudbook.storage;

import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_REVISION;
import static thudbook.storage.schema.Tables.DOCUMENT_SLUG;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.Slugs;
import thudbook.recipes.Act;

/**
 * Modules, or sessions, in the tables that they share.
 *
 * @param <T> what the documents say
 */
final class PlainTables<T> {
  private final Connections connections;
  private final String noun;
  private final ReadTexts<T> read;

  PlainTables(Connections connections, Act.Noun noun, Function<String, T> reader) {
    this.connections = connections;
    this.noun = noun.word();
    this.read = new ReadTexts<>(reader);
  }

  /** A document as kept. */
  record Row<T>(T noun, long version, int revision, @Nullable Instant binnedAt, String document) {}

  Optional<Row<T>> find(String slugOrId) {
    return connections
        .read(
            db -> {
              Optional<? extends Record> bySlug =
                  select(
                          db,
                          DOCUMENT.ID.eq(
                              db.select(DOCUMENT_SLUG.DOCUMENT)
                                  .from(DOCUMENT_SLUG)
                                  .where(
                                      DOCUMENT_SLUG.NOUN.eq(noun),
                                      DOCUMENT_SLUG.SLUG.eq(slugOrId))))
                      .fetchOptional();
              return bySlug.isPresent()
                  ? bySlug
                  : select(db, DOCUMENT.UUID.eq(slugOrId.toLowerCase(Locale.ROOT))).fetchOptional();
            })
        .map(this::row);
  }

  List<Row<T>> all() {
    return connections
        .read(
            db ->
                select(db, DOCUMENT.BINNED_AT.isNull())
                    .orderBy(DOCUMENT.TITLE_KEY, DOCUMENT.ID)
                    .fetch())
        .map(this::row);
  }

  List<Row<T>> binned() {
    return connections
        .read(
            db ->
                select(db, DOCUMENT.BINNED_AT.isNotNull())
                    .orderBy(DOCUMENT.BINNED_AT.desc(), DOCUMENT.ID.desc())
                    .fetch())
        .map(this::row);
  }

  boolean slugTaken(String slug) {
    return Slugs.isKept(slug)
        || connections.read(
            db ->
                db.fetchExists(
                    DOCUMENT_SLUG, DOCUMENT_SLUG.NOUN.eq(noun), DOCUMENT_SLUG.SLUG.eq(slug)));
  }

  List<Revision<T>> revisions(UUID id, int below, int limit) {
    Condition which = below == 0 ? DSL.noCondition() : DOCUMENT_REVISION.NUMBER.lt((long) below);
    return connections
        .read(
            db ->
                revisions(db, id, which)
                    .orderBy(DOCUMENT_REVISION.NUMBER.desc())
                    .limit(limit)
                    .fetch())
        .map(this::revision);
  }

  Optional<Revision<T>> revision(UUID id, int number) {
    return connections
        .read(db -> revisions(db, id, DOCUMENT_REVISION.NUMBER.eq((long) number)).fetchOptional())
        .map(this::revision);
  }

  private SelectConditionStep<? extends Record> select(DSLContext db, Condition condition) {
    return db.select(DOCUMENT.VERSION, DOCUMENT.HEAD, DOCUMENT.BINNED_AT, DOCUMENT_REVISION.TEXT)
        .from(DOCUMENT)
        .join(DOCUMENT_REVISION)
        .on(DOCUMENT_REVISION.DOCUMENT.eq(DOCUMENT.ID), DOCUMENT_REVISION.NUMBER.eq(DOCUMENT.HEAD))
        .where(DOCUMENT.NOUN.eq(noun), condition);
  }

  private SelectConditionStep<? extends Record> revisions(DSLContext db, UUID id, Condition which) {
    return db.select(DOCUMENT_REVISION.NUMBER, DOCUMENT_REVISION.TEXT)
        .select(CHANGE.fields())
        .from(DOCUMENT_REVISION)
        .join(DOCUMENT)
        .on(DOCUMENT.ID.eq(DOCUMENT_REVISION.DOCUMENT))
        .join(CHANGE)
        .on(CHANGE.ID.eq(DOCUMENT_REVISION.CHANGE))
        .where(DOCUMENT.NOUN.eq(noun), DOCUMENT.UUID.eq(id.toString()), which);
  }

  private Row<T> row(Record row) {
    Long binned = row.get(DOCUMENT.BINNED_AT);
    String text = row.get(DOCUMENT_REVISION.TEXT);
    return new Row<>(
        read.of(text),
        row.get(DOCUMENT.VERSION),
        Math.toIntExact(row.get(DOCUMENT.HEAD)),
        binned == null ? null : Instant.ofEpochMilli(binned),
        text);
  }

  private Revision<T> revision(Record row) {
    String text = row.get(DOCUMENT_REVISION.TEXT);
    return new Revision<>(
        Math.toIntExact(row.get(DOCUMENT_REVISION.NUMBER)),
        Instant.ofEpochMilli(row.get(CHANGE.AT)),
        new Author(row.get(CHANGE.AUTHOR)),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.ID),
        read.of(text),
        text);
  }
}
