package thudbook.storage;

import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;

import java.util.List;
import thudbook.changes.Noun;
import thudbook.documents.exchange.DocumentStore;

/** The texts of the newest revisions. */
final class StoredDocuments implements DocumentStore {
  private final Connections connections;

  StoredDocuments(Connections connections) {
    this.connections = connections;
  }

  @Override
  public List<Text> texts(Noun<?> noun, long after, int limit) {
    return connections.read(
        db ->
            db.select(THING.ID, THING.SLUG, REVISION.DOCUMENT)
                .from(THING)
                .join(REVISION)
                .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
                .where(THING.NOUN.eq(noun.word()), THING.BINNED_AT.isNull(), THING.ID.gt(after))
                .orderBy(THING.ID)
                .limit(limit)
                .fetch(row -> new Text(row.value1(), row.value2(), row.value3())));
  }
}
