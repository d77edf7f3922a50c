package thudbook.changes;

import java.util.List;
import java.util.Optional;

/**
 * Things of one noun as they are now.
 *
 * @param <T> what kind of things
 */
public interface Things<T extends Thing> {
  /** One by its slug, an old slug, or its id as text, also one that is in the bin. */
  Optional<Kept<T>> find(String slugOrId);

  /** All that are not in the bin, by title unless the noun says otherwise. */
  List<Kept<T>> all();
}
