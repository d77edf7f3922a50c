package thudbook.changes;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import thudbook.access.Author;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * What was done in a notebook, doing more, and undoing it. Each act is one change, under whose
 * number it can be looked up and undone.
 */
public final class Changes {
  private final ChangeStore changes;
  private final List<Keeping<?>> nouns;
  private final InstantSource clock;
  private final Runnable afterwards;

  /**
   * The acts of a notebook.
   *
   * @param nouns everything that is kept
   * @param afterwards what follows each act, such as remaking what it has overtaken
   */
  public Changes(
      ChangeStore changes, List<Keeping<?>> nouns, InstantSource clock, Runnable afterwards) {
    this.changes = changes;
    this.nouns = List.copyOf(nouns);
    this.clock = clock;
    this.afterwards = afterwards;
  }

  /** Whether nothing was ever written. */
  public boolean isEmpty() {
    return changes.isEmpty();
  }

  /** A change by its number. */
  public Optional<Change> find(long id) {
    return changes.find(id);
  }

  /** The latest changes, newest first. */
  public List<Change> newest(int limit) {
    return changes.newest(limit);
  }

  /**
   * Adds and changes things in one change, all or nothing. What is derived need not be given.
   *
   * @param what the act in words
   * @throws Refusal of kind CONFLICT or STALE with everything that is in the way
   */
  public long write(List<? extends Write<?>> writes, Author author, String what) {
    return done(Act.of(writes), author, what);
  }

  /** What the rule of a noun says against writing these; none: nothing. */
  public List<Fault> against(Noun<?> noun, List<? extends Write<?>> writes) {
    return keeping(noun).rule().obstacles(Act.of(writes));
  }

  /** Where things of a noun are kept. */
  @SuppressWarnings("unchecked") // A noun is kept in a store of its own type.
  public <T extends Thing> Store<T> store(Noun<T> noun) {
    return (Store<T>) keeping(noun).store();
  }

  /** What can be done with things of a noun. */
  public <T extends Thing> Keeper<T> keeper(Noun<T> noun) {
    return new Keeper<>(this, noun, store(noun));
  }

  /** Whether a thing of any noun has a slug, now or as an old name. */
  public boolean slugTaken(String slug) {
    return nouns.stream().anyMatch(noun -> noun.store().slugTaken(slug));
  }

  private Keeping<?> keeping(Noun<?> noun) {
    return nouns.stream().filter(kept -> kept.noun().equals(noun)).findFirst().orElseThrow();
  }

  /**
   * Undoes a change, as a change of its own that can be undone too.
   *
   * @return the number of the new change
   * @throws Refusal of kind NOT_FOUND, or CONFLICT with everything that stands in the way: it was
   *     undone before, something of it was changed since, something that it added is in use
   */
  public long undo(long id, Author author) {
    Act reverse = changes.undoing(id);
    String what = changes.find(id).map(Change::what).orElse("");
    return done(reverse, author, "undid: " + what);
  }

  /** What stands in the way of undoing a change; none: it can be undone. */
  public List<Fault> obstacles(long id) {
    try {
      return obstacles(changes.undoing(id));
    } catch (Refusal refusal) {
      return refusal.faults();
    }
  }

  long done(Act act, Author author, String what) {
    List<Fault> obstacles = obstacles(act);
    if (!obstacles.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, obstacles);
    }
    List<Write<?>> complete = new ArrayList<>();
    nouns.forEach(noun -> noun.complete(act).forEach(complete::add));
    if (complete.size() != act.writes().size()) {
      throw new IllegalArgumentException("an act on a noun that is not kept: " + act);
    }
    long change = changes.write(act.writing(complete), author, clock.instant(), what);
    afterwards.run();
    return change;
  }

  private List<Fault> obstacles(Act act) {
    return nouns.stream().flatMap(noun -> noun.rule().obstacles(act).stream()).toList();
  }
}
