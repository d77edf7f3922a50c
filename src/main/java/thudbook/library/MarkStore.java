package thudbook.library;

import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import thudbook.access.Author;

/** What members think of recipes and when they used them. It is nobody else's, and no revision. */
public interface MarkStore {
  /**
   * Makes a recipe a favourite of a member, or no longer one.
   *
   * @return whether there is such a recipe
   */
  boolean favourite(UUID recipe, Author member, boolean favourite);

  /** Notes that a member used recipes; ones that do not exist are left out. */
  void used(Collection<UUID> recipes, Author member, Instant at);
}
