package thudbook.sessions;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Revision;

/** Where sessions are kept, with every saved revision. */
public interface SessionStore {
  /** A session by its slug, an old slug, or its id as text, also one that is in the bin. */
  Optional<Stored> find(String slugOrId);

  /** Whether a slug is taken by a session, now or as an old name. */
  boolean slugTaken(String slug);

  /** All sessions that are not in the bin, by title. */
  List<Stored> all();

  /** Sessions in the bin, latest first. */
  List<Stored> binned();

  /**
   * Saved states of a session, newest first.
   *
   * @param below only revisions with lower numbers; 0: from the newest on
   * @param limit at least 1
   */
  List<Revision<Session>> revisions(UUID session, int below, int limit);

  /** One saved state of a session. */
  Optional<Revision<Session>> revision(UUID session, int number);

  /**
   * A session as kept.
   *
   * @param version rises with every change; the entity tag
   * @param revision the number of the saved state that counts
   * @param binnedAt when it went into the bin; null: it is not there
   * @param document its canonical text
   */
  record Stored(
      Session session, long version, int revision, @Nullable Instant binnedAt, String document) {}
}
