package thudbook.changes;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Where things of one noun are kept, with every saved revision. What was read lately is the same
 * object for all who ask.
 *
 * @param <T> what kind of things
 */
public interface Store<T extends Thing> extends Things<T> {
  /**
   * Things by the names that were asked for, in one look: slugs, old slugs, ids as text. Names of
   * nothing are left out.
   */
  Map<String, Kept<T>> named(Collection<String> slugsOrIds);

  /** Whether a slug is taken, now or as an old name. */
  boolean slugTaken(String slug);

  /**
   * What lies in the bin, latest first.
   *
   * @param limit so many at most
   */
  List<Kept<T>> binned(int limit);

  /**
   * Saved states of a thing, newest first.
   *
   * @param below only revisions with lower numbers; 0: from the newest on
   * @param limit at least 1
   */
  List<Revision<T>> revisions(UUID id, int below, int limit);

  /** One saved state of a thing. */
  Optional<Revision<T>> revision(UUID id, int number);
}
