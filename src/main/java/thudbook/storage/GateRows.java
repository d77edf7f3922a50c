package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_CHANNEL;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.GATE_SLUG;

import java.time.Instant;
import java.util.List;
import org.jooq.DSLContext;
import org.jooq.Record2;
import thudbook.equipment.Gate;
import thudbook.library.Words;
import thudbook.recipes.Act.GateWrite;

/** The rows of a gate: written anew, or with another revision. */
final class GateRows {
  private final DSLContext db;
  private final Instant at;
  private final long change;

  GateRows(DSLContext db, Instant at, long change) {
    this.db = db;
    this.at = at;
    this.change = change;
  }

  /** Writes a new gate, or the next revision of one whose version has been checked. */
  void write(GateWrite write) {
    Gate gate = write.gate();
    long number = 1;
    long id;
    if (write.version() == null) {
      id =
          db.insertInto(GATE)
              .set(GATE.UUID, gate.id().toString())
              .set(GATE.SLUG, gate.slug())
              .set(GATE.TITLE, gate.title())
              .set(GATE.TITLE_KEY, Words.fold(gate.title()))
              .set(GATE.VERSION, 1L)
              .set(GATE.HEAD, 1L)
              .returningResult(GATE.ID)
              .fetchSingle()
              .value1();
    } else {
      Record2<Long, Long> before =
          db.select(GATE.ID, GATE.HEAD)
              .from(GATE)
              .where(GATE.UUID.eq(gate.id().toString()))
              .fetchSingle();
      id = before.value1();
      number = before.value2() + 1;
      db.update(GATE)
          .set(GATE.SLUG, gate.slug())
          .set(GATE.TITLE, gate.title())
          .set(GATE.TITLE_KEY, Words.fold(gate.title()))
          .set(GATE.VERSION, GATE.VERSION.plus(1L))
          .set(GATE.HEAD, number)
          .where(GATE.ID.eq(id))
          .execute();
    }
    db.insertInto(GATE_SLUG)
        .set(GATE_SLUG.SLUG, gate.slug())
        .set(GATE_SLUG.GATE, id)
        .onConflictDoNothing()
        .execute();
    db.insertInto(GATE_REVISION)
        .set(GATE_REVISION.GATE, id)
        .set(GATE_REVISION.NUMBER, number)
        .set(GATE_REVISION.CHANGE, change)
        .set(GATE_REVISION.SHA256, StoredText.sha256(write.document()))
        .set(GATE_REVISION.DOCUMENT, write.document())
        .execute();
    channels(id, gate);
  }

  /** Channels keep their rows: those that are gone are retired, those that are back return. */
  private void channels(long id, Gate gate) {
    List<String> names = gate.channels().stream().map(channel -> channel.channel().name()).toList();
    db.update(GATE_CHANNEL)
        .set(GATE_CHANNEL.RETIRED_AT, at.toEpochMilli())
        .where(
            GATE_CHANNEL.GATE.eq(id),
            GATE_CHANNEL.NAME.notIn(names),
            GATE_CHANNEL.RETIRED_AT.isNull())
        .execute();
    for (String name : names) {
      db.insertInto(GATE_CHANNEL)
          .set(GATE_CHANNEL.GATE, id)
          .set(GATE_CHANNEL.NAME, name)
          .onConflict(GATE_CHANNEL.GATE, GATE_CHANNEL.NAME)
          .doUpdate()
          .setNull(GATE_CHANNEL.RETIRED_AT)
          .execute();
    }
  }
}
