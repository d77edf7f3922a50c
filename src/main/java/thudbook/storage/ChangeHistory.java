package thudbook.storage;

import static thudbook.storage.schema.Tables.BINNING;
import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Change;
import thudbook.changes.Change.Effect;
import thudbook.changes.Change.Kind;
import thudbook.changes.Derived;
import thudbook.changes.Noun;
import thudbook.changes.Thing;
import thudbook.changes.Write;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.storage.schema.tables.Revision;

/** What one act did, and what would undo it. */
final class ChangeHistory {
  private static final Revision HEAD = REVISION.as("head");
  private static final String STANDS = "stands";

  private final DSLContext db;
  private final StoredNouns nouns;
  private final long change;

  ChangeHistory(DSLContext db, StoredNouns nouns, long change) {
    this.db = db;
    this.nouns = nouns;
    this.change = change;
  }

  /** The change with its effects. */
  Optional<Change> find() {
    return db.selectFrom(CHANGE)
        .where(CHANGE.ID.eq(change))
        .fetchOptional()
        .map(
            row -> {
              List<Effect> effects = effects();
              return new Change(
                  change,
                  Instant.ofEpochMilli(row.getAt()),
                  new Author(row.getAuthor()),
                  row.getWhat(),
                  row.getUndoneBy(),
                  effects.subList(0, Math.min(effects.size(), Change.MOST_EFFECTS)),
                  effects.size());
            });
  }

  /** The act that undoes the change. */
  Act undoing() {
    Record row =
        db.select(CHANGE.UNDONE_BY)
            .from(CHANGE)
            .where(CHANGE.ID.eq(change))
            .fetchOptional()
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND, "no-such-change", "There is no such change."));
    if (row.get(CHANGE.UNDONE_BY) != null) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "undone-already", "This change was undone already.");
    }
    return reverse();
  }

  private List<Effect> effects() {
    List<Effect> effects = new ArrayList<>();
    for (Record row : revisions()) {
      long number = row.get(REVISION.NUMBER);
      effects.add(effect(row, number == 1 ? Kind.ADDED : Kind.CHANGED, Math.toIntExact(number)));
    }
    for (Record row : binnings()) {
      effects.add(effect(row, row.get(BINNING.INTO_BIN) == 1 ? Kind.BINNED : Kind.TAKEN_BACK, 0));
    }
    return effects;
  }

  private static Effect effect(Record row, Kind kind, int revision) {
    return new Effect(
        row.get(THING.NOUN), row.get(THING.SLUG), row.get(THING.TITLE), kind, revision);
  }

  private Act reverse() {
    List<Write<?>> writes = new ArrayList<>();
    List<Binning> binnings = new ArrayList<>();
    List<Fault> later = new ArrayList<>();
    for (Record row : revisions()) {
      if (!row.get(STANDS, Boolean.class) || row.get(THING.BINNED_AT) != null) {
        later.add(changedSince(row));
      } else if (row.get(REVISION.NUMBER) == 1) {
        binnings.add(binning(row, true));
      } else {
        writes.add(before(nouns.named(row.get(THING.NOUN)), row));
      }
    }
    for (Record row : binnings()) {
      boolean intoBin = row.get(BINNING.INTO_BIN) == 1;
      if ((row.get(THING.BINNED_AT) != null) == intoBin) {
        binnings.add(binning(row, !intoBin));
      } else {
        later.add(changedSince(row));
      }
    }
    if (!later.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, later);
    }
    return new Act(writes, binnings, change);
  }

  private Binning binning(Record row, boolean intoBin) {
    return new Binning(
        nouns.named(row.get(THING.NOUN)),
        UUID.fromString(row.get(THING.UUID)),
        row.get(THING.VERSION),
        intoBin);
  }

  /** The state of a thing before a revision, to be written again. */
  private <T extends Thing> Write<T> before(Noun<T> noun, Record row) {
    String text =
        db.select(REVISION.DOCUMENT)
            .from(REVISION)
            .where(
                REVISION.THING.eq(row.get(THING.ID)),
                REVISION.NUMBER.eq(row.get(REVISION.NUMBER) - 1))
            .fetchSingle()
            .value1();
    T thing = noun.read(text);
    boolean alike = noun.followsAlike(noun.read(row.get(REVISION.DOCUMENT)), thing);
    @Nullable Derived derived = alike ? Derived.AS_BEFORE : null;
    return new Write<>(noun, thing, text, row.get(THING.VERSION), derived);
  }

  private static Fault changedSince(Record row) {
    return new Fault(
        "",
        0,
        "changed-since",
        row.get(THING.SLUG),
        "",
        row.get(THING.TITLE)
            + " was changed or binned since: undo that first, or go back in its history.");
  }

  /**
   * What the change wrote, and whether that is what stands today, perhaps because what came later
   * was undone.
   */
  private List<? extends Record> revisions() {
    Field<Boolean> stands = DSL.field(REVISION.SHA256.eq(HEAD.SHA256)).as(STANDS);
    return inOrder(
        db.select(THING.fields())
            .select(REVISION.NUMBER, REVISION.DOCUMENT, stands)
            .from(REVISION)
            .join(THING)
            .on(THING.ID.eq(REVISION.THING))
            .join(HEAD)
            .on(HEAD.THING.eq(THING.ID), HEAD.NUMBER.eq(THING.HEAD))
            .where(REVISION.CHANGE.eq(change))
            .orderBy(REVISION.ID)
            .fetch());
  }

  /** What went into the bin or came out of it, as it is today. */
  private List<? extends Record> binnings() {
    return db.select(THING.fields())
        .select(BINNING.INTO_BIN)
        .from(BINNING)
        .join(THING)
        .on(THING.ID.eq(BINNING.THING))
        .where(BINNING.CHANGE.eq(change))
        .orderBy(BINNING.ID)
        .fetch();
  }

  private List<? extends Record> inOrder(List<? extends Record> rows) {
    return rows.stream()
        .sorted(Comparator.comparingInt(row -> nouns.rank(row.get(THING.NOUN))))
        .toList();
  }
}
