package thudbook.storage;

import static thudbook.storage.schema.Tables.THING;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jooq.Record;
import thudbook.changes.Act;
import thudbook.changes.Binning;
import thudbook.changes.Noun;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Things that have another version than an act expects. */
final class Stale {
  private final List<Fault> faults = new ArrayList<>();

  private Stale() {}

  /** A thing and its version as an act expects it. */
  private record Expected(UUID id, long version) {}

  /**
   * Refuses an act that was meant for earlier versions.
   *
   * @throws Refusal with everything that has another version
   */
  static void refuse(DSLContext db, StoredNouns nouns, Act act) {
    Stale stale = new Stale();
    for (StoredNouns.Stored<?> stored : nouns.forWriting()) {
      Batches.of(expected(act, stored.noun()))
          .forEach(some -> stale.check(db, stored.noun(), some));
    }
    if (!stale.faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.STALE, stale.faults);
    }
  }

  private static List<Expected> expected(Act act, Noun<?> noun) {
    List<Expected> expected = new ArrayList<>();
    act.writes(noun)
        .forEach(
            write -> {
              if (write.version() != null) {
                expected.add(new Expected(write.thing().id(), write.version()));
              }
            });
    for (Binning binning : act.binnings()) {
      if (binning.noun().equals(noun)) {
        expected.add(new Expected(binning.id(), binning.version()));
      }
    }
    return expected;
  }

  private void check(DSLContext db, Noun<?> noun, List<Expected> expected) {
    Map<String, Record> now =
        db.select(THING.UUID, THING.TITLE, THING.VERSION)
            .from(THING)
            .where(
                THING.NOUN.eq(noun.word()),
                THING.UUID.in(expected.stream().map(one -> one.id().toString()).toList()))
            .fetchMap(THING.UUID, row -> row);
    for (Expected one : expected) {
      Record row = Objects.requireNonNull(now.get(one.id().toString()));
      check(row.get(THING.TITLE), one.version(), row.get(THING.VERSION));
    }
  }

  private void check(String title, long expected, long found) {
    if (expected != found) {
      faults.add(
          new Fault(
              "",
              0,
              "stale",
              String.valueOf(expected),
              String.valueOf(found),
              title
                  + " was changed meanwhile: version "
                  + found
                  + " is there, and this was meant for version "
                  + expected
                  + "."));
    }
  }
}
