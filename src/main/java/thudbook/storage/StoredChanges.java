package thudbook.storage;

import static thudbook.storage.schema.Tables.BINNING;
import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record2;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.Noun;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Act.RecipeWrite;
import thudbook.recipes.Change;
import thudbook.recipes.ChangeStore;

/** Acts in their tables. */
final class StoredChanges implements ChangeStore {
  private final Connections connections;

  StoredChanges(Connections connections) {
    this.connections = connections;
  }

  @Override
  public boolean isEmpty() {
    return connections.read(db -> !db.fetchExists(CHANGE));
  }

  @Override
  public long studio() {
    return connections.read(StoredChanges::studio);
  }

  @Override
  public long write(Act act, Author author, Instant at, String what) {
    return connections.write(
        db -> {
          Clashes.refuse(db, act);
          refuseStale(db, act);
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
          boolean overtaken = studio(db) != act.studio();
          for (GateWrite gate : act.gates()) {
            new GateRows(db, at, change).write(gate);
            StoredPredictions.markUsersOf(db, gate.gate().id(), change);
          }
          new RecipeRows(db, author, at, change, overtaken).write(act.recipes());
          for (PlainWrite write : act.plain()) {
            new PlainRows(db, change).write(write);
          }
          for (Binning binning : act.binnings()) {
            move(db, binning, at, change);
          }
          return change;
        });
  }

  @Override
  public Optional<Change> find(long id) {
    return connections.read(db -> ChangeHistory.find(db, id));
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
                .map(id -> ChangeHistory.find(db, id).orElseThrow())
                .toList());
  }

  @Override
  public Act undoing(long id) {
    return connections.read(db -> ChangeHistory.undoing(db, id, studio(db)));
  }

  private static long studio(DSLContext db) {
    return db.select(DSL.coalesce(DSL.max(GATE_REVISION.ID), 0L))
            .from(GATE_REVISION)
            .fetchSingle()
            .value1()
        + db.fetchCount(BINNING, BINNING.GATE.isNotNull());
  }

  private static void refuseStale(DSLContext db, Act act) {
    Stale stale = new Stale();
    for (GateWrite write : act.gates()) {
      if (write.version() != null) {
        var now =
            db.select(GATE.TITLE, GATE.VERSION)
                .from(GATE)
                .where(GATE.UUID.eq(write.gate().id().toString()))
                .fetchSingle();
        stale.check(now.value1(), write.version(), now.value2());
      }
    }
    for (List<RecipeWrite> writes : Batches.of(act.recipes())) {
      refuseStale(db, writes, stale);
    }
    for (PlainWrite write : act.plain()) {
      if (write.version() != null) {
        var now = document(db, write.id());
        stale.check(now.value1(), write.version(), now.value2());
      }
    }
    for (Binning binning : act.binnings()) {
      String id = binning.id().toString();
      var now =
          switch (binning.noun()) {
            case RECIPE ->
                db.select(RECIPE.TITLE, RECIPE.VERSION)
                    .from(RECIPE)
                    .where(RECIPE.UUID.eq(id))
                    .fetchSingle();
            case GATE ->
                db.select(GATE.TITLE, GATE.VERSION)
                    .from(GATE)
                    .where(GATE.UUID.eq(id))
                    .fetchSingle();
            case MODULE, SESSION -> document(db, binning.id());
          };
      stale.check(now.value1(), binning.version(), now.value2());
    }
    stale.refuse();
  }

  private static void refuseStale(DSLContext db, List<RecipeWrite> writes, Stale stale) {
    List<String> changed =
        writes.stream()
            .filter(write -> write.version() != null)
            .map(write -> write.recipe().id().toString())
            .toList();
    if (changed.isEmpty()) {
      return;
    }
    Map<String, Record> now =
        db.select(RECIPE.UUID, RECIPE.TITLE, RECIPE.VERSION)
            .from(RECIPE)
            .where(RECIPE.UUID.in(changed))
            .fetchMap(RECIPE.UUID, row -> row);
    for (RecipeWrite write : writes) {
      if (write.version() != null) {
        Record row = Objects.requireNonNull(now.get(write.recipe().id().toString()));
        stale.check(row.get(RECIPE.TITLE), write.version(), row.get(RECIPE.VERSION));
      }
    }
  }

  private static Record2<String, Long> document(DSLContext db, UUID id) {
    return db.select(DOCUMENT.TITLE, DOCUMENT.VERSION)
        .from(DOCUMENT)
        .where(DOCUMENT.UUID.eq(id.toString()))
        .fetchSingle();
  }

  private static void refuseSecondUndo(int undone) {
    if (undone == 0) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "undone-already", "This change was undone already.");
    }
  }

  private static void move(DSLContext db, Binning binning, Instant at, long change) {
    Long time = binning.intoBin() ? at.toEpochMilli() : null;
    String uuid = binning.id().toString();
    Long id;
    if (binning.noun() == Noun.RECIPE) {
      id =
          db.update(RECIPE)
              .set(RECIPE.BINNED_AT, time)
              .set(RECIPE.VERSION, RECIPE.VERSION.plus(1L))
              .where(RECIPE.UUID.eq(uuid))
              .returningResult(RECIPE.ID)
              .fetchSingle()
              .value1();
      if (!binning.intoBin()) {
        // Gates may have come and gone while it lay there.
        StoredPredictions.mark(db, id);
      }
    } else if (binning.noun() == Noun.GATE) {
      id =
          db.update(GATE)
              .set(GATE.BINNED_AT, time)
              .set(GATE.VERSION, GATE.VERSION.plus(1L))
              .where(GATE.UUID.eq(uuid))
              .returningResult(GATE.ID)
              .fetchSingle()
              .value1();
      StoredPredictions.markUsersOf(db, binning.id(), change);
    } else {
      id =
          db.update(DOCUMENT)
              .set(DOCUMENT.BINNED_AT, time)
              .set(DOCUMENT.VERSION, DOCUMENT.VERSION.plus(1L))
              .where(DOCUMENT.UUID.eq(uuid))
              .returningResult(DOCUMENT.ID)
              .fetchSingle()
              .value1();
    }
    boolean recipe = binning.noun() == Noun.RECIPE;
    boolean gate = binning.noun() == Noun.GATE;
    db.insertInto(BINNING)
        .set(BINNING.CHANGE, change)
        .set(BINNING.RECIPE, recipe ? id : null)
        .set(BINNING.GATE, gate ? id : null)
        .set(BINNING.DOCUMENT, recipe || gate ? null : id)
        .set(BINNING.INTO_BIN, binning.intoBin() ? 1L : 0L)
        .execute();
  }
}
