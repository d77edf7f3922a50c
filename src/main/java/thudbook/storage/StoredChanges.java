package thudbook.storage;

import static thudbook.storage.schema.Tables.BINNING;
import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Change;
import thudbook.changes.ChangeStore;
import thudbook.changes.Noun;
import thudbook.quantities.Refusal;
import thudbook.storage.ThingRows.Doing;

/** Acts in their tables. */
final class StoredChanges implements ChangeStore {
  private final Connections connections;
  private final StoredNouns nouns;

  StoredChanges(Connections connections, StoredNouns nouns) {
    this.connections = connections;
    this.nouns = nouns;
  }

  @Override
  public boolean isEmpty() {
    return connections.read(db -> !db.fetchExists(CHANGE));
  }

  @Override
  public long state(Noun<?> noun) {
    return connections.read(db -> state(db, noun));
  }

  /** The same in the state of a transaction. */
  static long state(DSLContext db, Noun<?> noun) {
    return db.select(DSL.coalesce(DSL.max(REVISION.ID), 0L))
            .from(REVISION)
            .join(THING)
            .on(THING.ID.eq(REVISION.THING))
            .where(THING.NOUN.eq(noun.word()))
            .fetchSingle()
            .value1()
        + db.fetchCount(
            db.selectOne()
                .from(BINNING)
                .join(THING)
                .on(THING.ID.eq(BINNING.THING))
                .where(THING.NOUN.eq(noun.word())));
  }

  @Override
  public long write(Act act, Author author, Instant at, String what) {
    return connections.write(
        db -> {
          Clashes.refuse(db, nouns, act);
          Stale.refuse(db, nouns, act);
          long change =
              db.insertInto(CHANGE)
                  .set(CHANGE.AT, at.toEpochMilli())
                  .set(CHANGE.AUTHOR, author.name())
                  .set(CHANGE.WHAT, what)
                  .returningResult(CHANGE.ID)
                  .fetchSingle()
                  .value1();
          if (act.undoes() != null) {
            refuseSecondUndo(
                db.update(CHANGE)
                    .set(CHANGE.UNDONE_BY, change)
                    .where(CHANGE.ID.eq(act.undoes()), CHANGE.UNDONE_BY.isNull())
                    .execute());
          }
          write(db, act, new Doing(author, at, change));
          return change;
        });
  }

  private void write(DSLContext db, Act act, Doing doing) {
    Map<String, ThingRows<?>> rows = new LinkedHashMap<>();
    for (StoredNouns.Stored<?> stored : nouns.forWriting()) {
      rows.put(stored.noun().word(), new ThingRows<>(db, doing, stored));
    }
    rows.values().forEach(noun -> noun.write(act));
    for (Binning binning : act.binnings()) {
      Objects.requireNonNull(rows.get(binning.noun().word())).move(binning);
    }
  }

  @Override
  public Optional<Change> find(long id) {
    return connections.read(db -> new ChangeHistory(db, nouns, id).find());
  }

  @Override
  public List<Change> newest(int limit) {
    return connections.read(
        db ->
            db
                .select(CHANGE.ID)
                .from(CHANGE)
                .orderBy(CHANGE.ID.desc())
                .limit(limit)
                .fetch(CHANGE.ID)
                .stream()
                .map(id -> new ChangeHistory(db, nouns, id).find().orElseThrow())
                .toList());
  }

  @Override
  public Act undoing(long id) {
    return connections.read(db -> new ChangeHistory(db, nouns, id).undoing());
  }

  private static void refuseSecondUndo(int undone) {
    if (undone == 0) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "undone-already", "This change was undone already.");
    }
  }
}
