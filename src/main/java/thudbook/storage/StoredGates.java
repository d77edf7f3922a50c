package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_CHANNEL;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.GATE_SLUG;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record2;
import org.jooq.SelectConditionStep;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.equipment.StudioChannel;
import thudbook.recipes.RecipeStore.NewGate;

/** The studio's gates in their tables. */
final class StoredGates implements GateStore {
  private final Connections connections;

  StoredGates(Connections connections) {
    this.connections = connections;
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return connections
        .read(
            db -> {
              var bySlug =
                  select(
                          db,
                          GATE.ID.eq(
                              db.select(GATE_SLUG.GATE)
                                  .from(GATE_SLUG)
                                  .where(GATE_SLUG.SLUG.eq(slugOrId))))
                      .fetchOptional();
              return bySlug.isPresent()
                  ? bySlug
                  : select(db, GATE.UUID.eq(slugOrId.toLowerCase(Locale.ROOT))).fetchOptional();
            })
        .map(StoredGates::stored);
  }

  @Override
  public List<Stored> all() {
    return connections
        .read(db -> select(db, GATE.BINNED_AT.isNull()).orderBy(GATE.TITLE_KEY, GATE.ID).fetch())
        .map(StoredGates::stored);
  }

  /** Adds the first revision of a gate. */
  static void add(DSLContext db, NewGate added, long change) {
    Gate gate = added.gate();
    long id =
        db.insertInto(GATE)
            .set(GATE.UUID, gate.id().toString())
            .set(GATE.SLUG, gate.slug())
            .set(GATE.TITLE, gate.title())
            .set(GATE.TITLE_KEY, Folding.fold(gate.title()))
            .set(GATE.VERSION, 1L)
            .set(GATE.HEAD, 1L)
            .returningResult(GATE.ID)
            .fetchSingle()
            .value1();
    db.insertInto(GATE_SLUG).set(GATE_SLUG.SLUG, gate.slug()).set(GATE_SLUG.GATE, id).execute();
    db.insertInto(GATE_REVISION)
        .set(GATE_REVISION.GATE, id)
        .set(GATE_REVISION.NUMBER, 1L)
        .set(GATE_REVISION.CHANGE, change)
        .set(GATE_REVISION.SHA256, StoredText.sha256(added.document()))
        .set(GATE_REVISION.DOCUMENT, added.document())
        .execute();
    for (StudioChannel channel : gate.channels()) {
      db.insertInto(GATE_CHANNEL)
          .set(GATE_CHANNEL.GATE, id)
          .set(GATE_CHANNEL.NAME, channel.channel().name())
          .execute();
    }
  }

  private static SelectConditionStep<Record2<Long, String>> select(
      DSLContext db, Condition condition) {
    return db.select(GATE.VERSION, GATE_REVISION.DOCUMENT)
        .from(GATE)
        .join(GATE_REVISION)
        .on(GATE_REVISION.GATE.eq(GATE.ID), GATE_REVISION.NUMBER.eq(GATE.HEAD))
        .where(condition);
  }

  private static Stored stored(Record2<Long, String> row) {
    return new Stored(StoredText.gate(row.value2()), row.value1(), row.value2());
  }
}
