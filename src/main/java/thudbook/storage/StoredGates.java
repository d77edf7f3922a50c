package thudbook.storage;

import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.GATE_SLUG;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.Slugs;
import thudbook.equipment.Gate;
import thudbook.equipment.GateHistory;

/** The studio's gates in their tables. */
final class StoredGates implements GateHistory {
  private final Connections connections;
  private final ReadTexts<Gate> read = new ReadTexts<>(StoredText::gate);

  StoredGates(Connections connections) {
    this.connections = connections;
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return connections
        .read(
            db -> {
              Optional<? extends Record> bySlug =
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
        .map(this::stored);
  }

  @Override
  public List<Stored> all() {
    return connections
        .read(db -> select(db, GATE.BINNED_AT.isNull()).orderBy(GATE.TITLE_KEY, GATE.ID).fetch())
        .map(this::stored);
  }

  @Override
  public List<Stored> binned() {
    return connections
        .read(
            db ->
                select(db, GATE.BINNED_AT.isNotNull())
                    .orderBy(GATE.BINNED_AT.desc(), GATE.ID.desc())
                    .fetch())
        .map(this::stored);
  }

  @Override
  public boolean slugTaken(String slug) {
    return Slugs.isKept(slug)
        || connections.read(db -> db.fetchExists(GATE_SLUG, GATE_SLUG.SLUG.eq(slug)));
  }

  @Override
  public List<Revision<Gate>> revisions(UUID gate, int below, int limit) {
    Condition which = below == 0 ? DSL.noCondition() : GATE_REVISION.NUMBER.lt((long) below);
    return connections
        .read(
            db ->
                revisions(db, gate, which)
                    .orderBy(GATE_REVISION.NUMBER.desc())
                    .limit(limit)
                    .fetch())
        .map(this::revision);
  }

  @Override
  public Optional<Revision<Gate>> revision(UUID gate, int number) {
    return connections
        .read(db -> revisions(db, gate, GATE_REVISION.NUMBER.eq((long) number)).fetchOptional())
        .map(this::revision);
  }

  /** What a stage may call a gate: its slug, an old slug, its id. */
  static Select<Record1<String>> namesOf(UUID gate) {
    String id = gate.toString();
    return DSL.select(GATE_SLUG.SLUG)
        .from(GATE_SLUG)
        .join(GATE)
        .on(GATE.ID.eq(GATE_SLUG.GATE))
        .where(GATE.UUID.eq(id))
        .unionAll(DSL.select(DSL.val(id)));
  }

  private static SelectConditionStep<? extends Record> revisions(
      DSLContext db, UUID gate, Condition which) {
    return db.select(GATE_REVISION.NUMBER, GATE_REVISION.DOCUMENT)
        .select(CHANGE.fields())
        .from(GATE_REVISION)
        .join(GATE)
        .on(GATE.ID.eq(GATE_REVISION.GATE))
        .join(CHANGE)
        .on(CHANGE.ID.eq(GATE_REVISION.CHANGE))
        .where(GATE.UUID.eq(gate.toString()), which);
  }

  private Revision<Gate> revision(Record row) {
    String document = row.get(GATE_REVISION.DOCUMENT);
    return new Revision<>(
        Math.toIntExact(row.get(GATE_REVISION.NUMBER)),
        Instant.ofEpochMilli(row.get(CHANGE.AT)),
        new Author(row.get(CHANGE.AUTHOR)),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.ID),
        read.of(document),
        document);
  }

  private static SelectConditionStep<? extends Record> select(DSLContext db, Condition condition) {
    return db.select(GATE.VERSION, GATE.HEAD, GATE.BINNED_AT, GATE_REVISION.DOCUMENT)
        .from(GATE)
        .join(GATE_REVISION)
        .on(GATE_REVISION.GATE.eq(GATE.ID), GATE_REVISION.NUMBER.eq(GATE.HEAD))
        .where(condition);
  }

  private Stored stored(Record row) {
    Long binned = row.get(GATE.BINNED_AT);
    String document = row.get(GATE_REVISION.DOCUMENT);
    return new Stored(
        read.of(document),
        row.get(GATE.VERSION),
        Math.toIntExact(row.get(GATE.HEAD)),
        binned == null ? null : Instant.ofEpochMilli(binned),
        document);
  }
}
