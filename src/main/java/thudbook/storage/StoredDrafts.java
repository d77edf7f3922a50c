package thudbook.storage;

import static thudbook.storage.schema.Tables.DRAFT;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.recipes.DraftStore;
import thudbook.storage.schema.tables.records.DraftRecord;

/** Drafts in their table. */
final class StoredDrafts implements DraftStore {
  private final Connections connections;

  StoredDrafts(Connections connections) {
    this.connections = connections;
  }

  @Override
  public boolean keep(Draft draft) {
    UUID subject = draft.subject();
    DraftRecord row =
        new DraftRecord(
            draft.key().toString(),
            draft.noun(),
            subject == null ? null : subject.toString(),
            draft.version(),
            draft.author().name(),
            draft.keptAt().toEpochMilli(),
            draft.step(),
            draft.form());
    return connections.write(
        db ->
            db.insertInto(DRAFT)
                    .set(row)
                    .onConflict(DRAFT.KEY)
                    .doUpdate()
                    .set(row)
                    .where(DRAFT.STEP.lt(DSL.excluded(DRAFT.STEP)))
                    .execute()
                > 0);
  }

  @Override
  public Optional<Draft> find(UUID key) {
    return connections.read(
        db ->
            db.selectFrom(DRAFT)
                .where(DRAFT.KEY.eq(key.toString()))
                .fetchOptional(StoredDrafts::draft));
  }

  @Override
  public List<Draft> unfinished(Author author, int limit) {
    return connections.read(
        db ->
            db.selectFrom(DRAFT)
                .where(DRAFT.AUTHOR.eq(author.name()))
                .orderBy(DRAFT.KEPT_AT.desc(), DRAFT.KEY)
                .limit(limit)
                .fetch(StoredDrafts::draft));
  }

  @Override
  public void drop(UUID key) {
    connections.write(db -> db.deleteFrom(DRAFT).where(DRAFT.KEY.eq(key.toString())).execute());
  }

  private static Draft draft(DraftRecord row) {
    String subject = row.getSubject();
    return new Draft(
        UUID.fromString(row.getKey()),
        row.getNoun(),
        subject == null ? null : UUID.fromString(subject),
        row.getVersion(),
        new Author(row.getAuthor()),
        Instant.ofEpochMilli(row.getKeptAt()),
        row.getStep(),
        row.getForm());
  }
}
