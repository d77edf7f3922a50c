package thudbook.changes;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.UUID;
import thudbook.access.Author;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * What can be done with things of one noun. Each act is one change and returns its number.
 *
 * @param <T> what kind of things
 */
public final class Keeper<T extends Thing> {
  private final Changes acts;
  private final Noun<T> noun;
  private final Store<T> store;

  Keeper(Changes acts, Noun<T> noun, Store<T> store) {
    this.acts = acts;
    this.noun = noun;
    this.store = store;
  }

  /** What they are. */
  public Noun<T> noun() {
    return noun;
  }

  /** Where they are kept. */
  public Store<T> store() {
    return store;
  }

  /**
   * Adds a thing.
   *
   * @param what the act in words
   * @throws Refusal of kind CONFLICT if its id or slug is taken, or a rule is against it
   */
  public long create(T thing, Author author, String what) {
    return acts.write(List.of(Write.added(noun, thing)), author, what);
  }

  /**
   * Adds and changes things in one change, all or nothing.
   *
   * @throws Refusal of kind CONFLICT or STALE with everything that is in the way
   */
  public long write(List<Write<T>> writes, Author author, String what) {
    return acts.write(writes, author, what);
  }

  /**
   * Saves a new revision. A slug that differs renames the thing; the old one goes on to lead to it.
   * A text that is the same as before makes no revision.
   *
   * @param version the version that the author saw
   * @param what what is different, in words
   * @throws Refusal of kind NOT_FOUND, STALE if it has another version by now, or CONFLICT if it is
   *     in the bin, its slug is taken, or a rule is against it
   */
  public long change(UUID id, long version, T thing, Author author, String what) {
    Kept<T> kept = standing(id);
    if (!thing.id().equals(id)) {
      throw new IllegalArgumentException("another " + noun.word() + " than " + id + ": " + thing);
    }
    Write<T> write = Write.changed(noun, thing, version);
    if (kept.version() == version && kept.document().equals(write.document())) {
      return store.revision(id, kept.revision()).orElseThrow().change();
    }
    return acts.write(List.of(write), author, what);
  }

  /**
   * Makes an earlier revision the newest one, as a revision of its own. The slug of today stays.
   *
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long restore(UUID id, long version, int revision, Author author) {
    Kept<T> kept = standing(id);
    T earlier =
        store.revision(id, revision).map(Revision::thing).orElseThrow(() -> none(revision, kept));
    return change(
        id,
        version,
        noun.withSlug(earlier, kept.slug()),
        author,
        "went back to revision " + revision);
  }

  /**
   * Throws a thing into the bin, if it still has the version that the author saw.
   *
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long bin(UUID id, long version, Author author) {
    Kept<T> kept = standing(id);
    return move(List.of(new Binning(noun, id, version, true)), author, kept.title());
  }

  /**
   * Throws things into the bin.
   *
   * @param ids each once
   * @throws Refusal of kind NOT_FOUND or CONFLICT with each that is not there or in the bin already
   */
  public long bin(List<UUID> ids, Author author) {
    return move(ids, true, author);
  }

  /**
   * Takes a thing out of the bin.
   *
   * @throws Refusal of kind NOT_FOUND, or CONFLICT if it is not in the bin
   */
  public long unbin(UUID id, Author author) {
    Kept<T> kept = found(id);
    if (!kept.isBinned()) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "not-there", kept.title() + " is not in the bin.");
    }
    return move(List.of(new Binning(noun, id, kept.version(), false)), author, kept.title());
  }

  /**
   * Takes things out of the bin.
   *
   * @throws Refusal of kind CONFLICT with each that is not in the bin
   */
  public long unbin(List<UUID> ids, Author author) {
    return move(ids, false, author);
  }

  private long move(List<UUID> ids, boolean intoBin, Author author) {
    List<Binning> binnings = new ArrayList<>();
    List<String> titles = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (UUID id : new LinkedHashSet<>(ids)) {
      Kept<T> kept = store.find(id.toString()).orElse(null);
      if (kept == null) {
        String word = noun.word();
        faults.add(fault("no-such-" + word, id, "There is no " + word + " " + id + "."));
      } else if (kept.isBinned() == intoBin) {
        String where = intoBin ? " is in the bin already." : " is not in the bin.";
        faults.add(fault("not-there", id, kept.title() + where));
      } else {
        binnings.add(new Binning(noun, id, kept.version(), intoBin));
        titles.add(kept.title());
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, faults);
    }
    String which = titles.size() == 1 ? titles.get(0) : titles.size() + " " + noun.word() + "s";
    return move(binnings, author, which);
  }

  private long move(List<Binning> binnings, Author author, String which) {
    boolean intoBin = binnings.stream().anyMatch(Binning::intoBin);
    String what =
        intoBin ? "threw " + which + " into the bin" : "took " + which + " out of the bin";
    return acts.done(new Act(List.of(), binnings, null), author, what);
  }

  private Kept<T> standing(UUID id) {
    Kept<T> kept = found(id);
    if (kept.isBinned()) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT, "in-bin", kept.title() + " is in the bin: take it out first.");
    }
    return kept;
  }

  private Kept<T> found(UUID id) {
    return store
        .find(id.toString())
        .orElseThrow(
            () ->
                Refusal.of(
                    Refusal.Kind.NOT_FOUND,
                    "no-such-" + noun.word(),
                    "There is no such " + noun.word() + "."));
  }

  private static Refusal none(int revision, Kept<?> kept) {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND,
        "no-such-revision",
        "There is no revision " + revision + " of " + kept.title() + ".");
  }

  private static Fault fault(String code, UUID id, String message) {
    return new Fault("", 0, code, id.toString(), "", message);
  }
}
