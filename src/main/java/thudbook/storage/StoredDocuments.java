package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;

import java.util.List;
import thudbook.documents.DocumentStore;

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
}
