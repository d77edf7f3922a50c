package thudbook.storage;

import static thudbook.storage.schema.Tables.BINNING;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;
import static thudbook.storage.schema.Tables.THING_SLUG;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Noun;
import thudbook.changes.Thing;
import thudbook.changes.Write;
import thudbook.library.Words;

/**
 * The rows of the things of one noun in one act: written anew, with another revision, or moved into
 * the bin or out of it.
 *
 * @param <T> what kind of things
 */
final class ThingRows<T extends Thing> {
  private final DSLContext db;
  private final Doing doing;
  private final Noun<T> noun;
  private final NewRows rows;
  private final SideRows<T> sides;

  /** Begins an act, before anything of it is written. */
  ThingRows(DSLContext db, Doing doing, StoredNouns.Stored<T> stored) {
    this.db = db;
    this.doing = doing;
    this.noun = stored.noun();
    this.rows = new NewRows(db);
    this.sides = stored.tables().open(db, rows, doing.change());
  }

  /** Who does it, when, and the number of the change. */
  record Doing(Author author, Instant at, long change) {}

  /** Writes new things, and the next revisions of those whose version has been checked. */
  void write(Act act) {
    List<Write<T>> writes = act.writes(noun);
    if (writes.isEmpty()) {
      return;
    }
    long key = largestKey();
    for (Write<T> write : writes) {
      if (write.version() == null) {
        add(++key, write);
      }
    }
    List<Write<T>> changed = writes.stream().filter(write -> write.version() != null).toList();
    for (List<Write<T>> some : Batches.of(changed)) {
      change(some);
    }
    rows.write();
    sides.written(writes);
  }

  /** Things are never taken away, so keys that follow it are free. */
  private long largestKey() {
    return db.select(DSL.coalesce(DSL.max(THING.ID), 0L)).from(THING).fetchSingle().value1();
  }

  private void add(long id, Write<T> write) {
    T thing = write.thing();
    Map<Field<?>, @Nullable Object> row = columns(thing);
    row.put(THING.ID, id);
    row.put(THING.NOUN, noun.word());
    row.put(THING.UUID, thing.id().toString());
    row.put(THING.AUTHOR, doing.author().name());
    row.put(THING.VERSION, 1L);
    row.put(THING.HEAD, 1L);
    row.put(THING.CREATED_AT, doing.at().toEpochMilli());
    row.put(THING.CHANGED_AT, doing.at().toEpochMilli());
    rows.add(THING, row);
    rows.add(
        THING_SLUG,
        Map.of(THING_SLUG.NOUN, noun.word(), THING_SLUG.SLUG, thing.slug(), THING_SLUG.THING, id));
    revision(id, 1, null, write.document());
    sides.add(id, write);
  }

  private void change(List<Write<T>> writes) {
    List<String> uuids = writes.stream().map(write -> write.thing().id().toString()).toList();
    Map<String, Record> before =
        db.select(THING.UUID, THING.ID, THING.SLUG, THING.HEAD, THING.CREATED_AT, REVISION.SHA256)
            .from(THING)
            .join(REVISION)
            .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
            .where(THING.NOUN.eq(noun.word()), THING.UUID.in(uuids))
            .fetchMap(THING.UUID, row -> row);
    sides.clear(before.values().stream().map(row -> row.get(THING.ID)).toList());
    for (Write<T> write : writes) {
      change(write, Objects.requireNonNull(before.get(write.thing().id().toString())));
    }
  }

  private void change(Write<T> write, Record before) {
    T thing = write.thing();
    long id = before.get(THING.ID);
    long number = before.get(THING.HEAD) + 1;
    db.update(THING)
        .set(columns(thing))
        .set(THING.VERSION, THING.VERSION.plus(1L))
        .set(THING.HEAD, number)
        // A clock that was set back must not make a thing older than it is.
        .set(THING.CHANGED_AT, Math.max(doing.at().toEpochMilli(), before.get(THING.CREATED_AT)))
        .where(THING.ID.eq(id))
        .execute();
    if (!thing.slug().equals(before.get(THING.SLUG))) {
      // It may be an old one of its own.
      db.insertInto(THING_SLUG)
          .set(THING_SLUG.NOUN, noun.word())
          .set(THING_SLUG.SLUG, thing.slug())
          .set(THING_SLUG.THING, id)
          .onConflictDoNothing()
          .execute();
    }
    revision(id, number, before.get(REVISION.SHA256), write.document());
    sides.add(id, write);
  }

  private static Map<Field<?>, @Nullable Object> columns(Thing thing) {
    Map<Field<?>, @Nullable Object> columns = new HashMap<>();
    columns.put(THING.SLUG, thing.slug());
    columns.put(THING.TITLE, thing.title());
    columns.put(THING.TITLE_KEY, Words.fold(thing.title()));
    return columns;
  }

  /**
   * A revision.
   *
   * @param parent the hash of the text before; null: it is the first
   */
  private void revision(long thing, long number, @Nullable String parent, String document) {
    Map<Field<?>, @Nullable Object> row = new HashMap<>();
    row.put(REVISION.THING, thing);
    row.put(REVISION.NUMBER, number);
    row.put(REVISION.CHANGE, doing.change());
    row.put(REVISION.PARENT, parent);
    row.put(REVISION.SHA256, StoredText.sha256(document));
    row.put(REVISION.DOCUMENT, document);
    rows.add(REVISION, row);
  }

  /** Moves a thing whose version has been checked. */
  void move(Binning binning) {
    Long time = binning.intoBin() ? doing.at().toEpochMilli() : null;
    long id =
        db.update(THING)
            .set(THING.BINNED_AT, time)
            .set(THING.VERSION, THING.VERSION.plus(1L))
            .where(StoredThings.is(noun, binning.id().toString()))
            .returningResult(THING.ID)
            .fetchSingle()
            .value1();
    sides.moved(id, binning);
    db.insertInto(BINNING)
        .set(BINNING.CHANGE, doing.change())
        .set(BINNING.THING, id)
        .set(BINNING.INTO_BIN, binning.intoBin() ? 1L : 0L)
        .execute();
  }
}
