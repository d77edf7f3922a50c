package thudbook.storage;

import static thudbook.storage.schema.Tables.THING;
import static thudbook.storage.schema.Tables.THING_SLUG;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Act;
import thudbook.changes.Thing;
import thudbook.changes.Write;
import thudbook.documents.Slugs;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Ids and slugs that are taken, by what is stored or by what comes with them. */
final class Clashes {
  private final List<Fault> faults = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private Clashes() {}

  /**
   * Refuses what can't be written beside what is stored.
   *
   * @throws Refusal with a fault for every id and slug that is taken
   */
  static void refuse(DSLContext db, StoredNouns nouns, Act act) {
    Clashes clashes = new Clashes();
    for (StoredNouns.Stored<?> stored : nouns.forWriting()) {
      Batches.of(act.writes(stored.noun())).forEach(some -> clashes.check(db, some));
    }
    if (!clashes.faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, clashes.faults);
    }
  }

  private <T extends Thing> void check(DSLContext db, List<Write<T>> writes) {
    String noun = writes.get(0).noun().word();
    Set<String> stored =
        db.select(THING.UUID)
            .from(THING)
            .where(
                THING.NOUN.eq(noun),
                THING.UUID.in(writes.stream().map(w -> w.thing().id().toString()).toList()))
            .fetchSet(THING.UUID);
    Map<String, String> owners =
        db.select(THING_SLUG.SLUG, THING.UUID)
            .from(THING_SLUG)
            .join(THING)
            .on(THING.ID.eq(THING_SLUG.THING))
            .where(
                THING_SLUG.NOUN.eq(noun),
                THING_SLUG.SLUG.in(writes.stream().map(w -> w.thing().slug()).toList()))
            .fetchMap(THING_SLUG.SLUG, THING.UUID);
    for (Write<T> write : writes) {
      String id = write.thing().id().toString();
      String slug = write.thing().slug();
      boolean isNew = write.version() == null;
      check(noun, "id", id, isNew && stored.contains(id));
      slug(noun, slug, isNew, id, owners.get(slug));
    }
  }

  /** A thing that is there already may keep its slug, or go back to an old one of its own. */
  private void slug(String noun, String slug, boolean isNew, String id, @Nullable String owner) {
    if (owner == null && Slugs.isKept(slug)) {
      faults.add(
          new Fault(
              "/slug",
              0,
              "slug-kept",
              slug,
              "another one",
              "The slug " + slug + " leads to the page on which a new " + noun + " is written."));
    } else {
      check(noun, "slug", slug, owner != null && (isNew || !owner.equals(id)));
    }
  }

  private void check(String noun, String key, String value, boolean stored) {
    if (!seen.add(noun + ' ' + key + ' ' + value) || stored) {
      faults.add(
          new Fault(
              "/" + key,
              0,
              key + "-taken",
              value,
              "one that no other " + noun + " has",
              "The " + key + " " + value + " is taken by another " + noun + "."));
    }
  }
}
