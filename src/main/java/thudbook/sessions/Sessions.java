package thudbook.sessions;

import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.ChangeStore;

/** What can be done with sessions: each act is one change, which can be undone. */
public final class Sessions {
  private final ChangeStore changes;
  private final SessionStore store;
  private final InstantSource clock;

  /** Acts on the sessions of a notebook. */
  public Sessions(ChangeStore changes, SessionStore store, InstantSource clock) {
    this.changes = changes;
    this.store = store;
    this.clock = clock;
  }

  /**
   * A session with its canonical text.
   *
   * @param document what is kept
   */
  public record Written(Session session, String document) {
    /**
     * What an act writes.
     *
     * @param version the version that is changed; null: it is new
     */
    public PlainWrite write(@Nullable Long version) {
      return new PlainWrite(
          Act.Noun.SESSION, session.id(), session.slug(), session.title(), document, version);
    }
  }

  /**
   * Adds a session.
   *
   * @throws Refusal of kind CONFLICT if its id or slug is taken
   */
  public long create(Written written, Author author, String what) {
    return done(List.of(written.write(null)), List.of(), author, what);
  }

  /**
   * Saves a new revision. A text that is the same as before makes none.
   *
   * @param version the version that the author saw
   * @throws Refusal of kind NOT_FOUND, STALE if it has another version by now, or CONFLICT if it is
   *     in the bin or the slug is taken
   */
  public long change(UUID id, long version, Written written, Author author, String what) {
    SessionStore.Stored stored = standing(id);
    if (!written.session().id().equals(id)) {
      throw new IllegalArgumentException("another session than " + id + ": " + written.session());
    }
    if (stored.version() == version && stored.document().equals(written.document())) {
      return store.revision(id, stored.revision()).orElseThrow().change();
    }
    return done(List.of(written.write(version)), List.of(), author, what);
  }

  /**
   * Makes an earlier revision the newest one, as a revision of its own. The slug of today stays.
   *
   * @param document writes the canonical text of a session
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long restore(
      UUID id, long version, int revision, Author author, Function<Session, String> document) {
    SessionStore.Stored stored = standing(id);
    Revision<Session> earlier =
        store
            .revision(id, revision)
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND,
                        "no-such-revision",
                        "There is no revision "
                            + revision
                            + " of "
                            + stored.session().title()
                            + "."));
    Session session = earlier.noun().withSlug(stored.session().slug());
    return change(
        id,
        version,
        new Written(session, document.apply(session)),
        author,
        "went back to revision " + revision);
  }

  /**
   * Throws a session into the bin.
   *
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long bin(UUID id, long version, Author author) {
    SessionStore.Stored stored = standing(id);
    return move(id, version, true, author, "threw " + stored.session().title() + " into the bin");
  }

  /**
   * Takes a session out of the bin.
   *
   * @throws Refusal of kind NOT_FOUND, or CONFLICT if it is not in the bin
   */
  public long unbin(UUID id, Author author) {
    SessionStore.Stored stored = found(id);
    if (stored.binnedAt() == null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT, "not-there", stored.session().title() + " is not in the bin.");
    }
    String what = "took " + stored.session().title() + " out of the bin";
    return move(id, stored.version(), false, author, what);
  }

  private long move(UUID id, long version, boolean intoBin, Author author, String what) {
    Binning binning = new Binning(Act.Noun.SESSION, id, version, intoBin);
    return done(List.of(), List.of(binning), author, what);
  }

  private long done(List<PlainWrite> writes, List<Binning> binnings, Author author, String what) {
    Act act = new Act(List.of(), List.of(), binnings, changes.studio(), null).with(writes);
    return changes.write(act, author, clock.instant(), what);
  }

  private SessionStore.Stored standing(UUID id) {
    SessionStore.Stored stored = found(id);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.session().title() + " is in the bin: take it out first.");
    }
    return stored;
  }

  private SessionStore.Stored found(UUID id) {
    return store
        .find(id.toString())
        .orElseThrow(
            () ->
                Refusal.of(Refusal.Kind.NOT_FOUND, "no-such-session", "There is no such session."));
  }
}
