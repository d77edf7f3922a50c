package thudbook.storage;

import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_REVISION;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;

import java.util.List;
import thudbook.documents.DocumentStore;
import thudbook.recipes.Act;

/** The texts of the newest revisions. */
final class StoredDocuments implements DocumentStore {
  private final Connections connections;

  StoredDocuments(Connections connections) {
    this.connections = connections;
  }

  @Override
  public List<Kept> gates(long after, int limit) {
    return connections.read(
        db ->
            db.select(GATE.ID, GATE.SLUG, GATE_REVISION.DOCUMENT)
                .from(GATE)
                .join(GATE_REVISION)
                .on(GATE_REVISION.GATE.eq(GATE.ID), GATE_REVISION.NUMBER.eq(GATE.HEAD))
                .where(GATE.BINNED_AT.isNull(), GATE.ID.gt(after))
                .orderBy(GATE.ID)
                .limit(limit)
                .fetch(row -> new Kept(row.value1(), row.value2(), row.value3())));
  }

  @Override
  public List<Kept> recipes(long after, int limit) {
    return connections.read(
        db ->
            db.select(RECIPE.ID, RECIPE.SLUG, RECIPE_REVISION.DOCUMENT)
                .from(RECIPE)
                .join(RECIPE_REVISION)
                .on(RECIPE_REVISION.RECIPE.eq(RECIPE.ID), RECIPE_REVISION.NUMBER.eq(RECIPE.HEAD))
                .where(RECIPE.BINNED_AT.isNull(), RECIPE.ID.gt(after))
                .orderBy(RECIPE.ID)
                .limit(limit)
                .fetch(row -> new Kept(row.value1(), row.value2(), row.value3())));
  }

  @Override
  public List<Kept> plain(Act.Noun noun, long after, int limit) {
    return connections.read(
        db ->
            db.select(DOCUMENT.ID, DOCUMENT.SLUG, DOCUMENT_REVISION.TEXT)
                .from(DOCUMENT)
                .join(DOCUMENT_REVISION)
                .on(
                    DOCUMENT_REVISION.DOCUMENT.eq(DOCUMENT.ID),
                    DOCUMENT_REVISION.NUMBER.eq(DOCUMENT.HEAD))
                .where(
                    DOCUMENT.NOUN.eq(noun.word()),
                    DOCUMENT.BINNED_AT.isNull(),
                    DOCUMENT.ID.gt(after))
                .orderBy(DOCUMENT.ID)
                .limit(limit)
                .fetch(row -> new Kept(row.value1(), row.value2(), row.value3())));
  }
}
