package thudbook.sessions;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;

/** Where recalls are kept. */
public interface RecallStore {
  /**
   * Keeps a recall in place of an earlier state of it. One that is finished is not opened again.
   *
   * @return whether it was kept: one that was sent earlier than what is there is not, nor one whose
   *     recipe there is not
   */
  boolean keep(Recall recall);

  /** A recall by its id. */
  Optional<Recall> find(UUID id);

  /** Recalls of a recipe that are finished, latest first, so many at most. */
  List<Use> uses(UUID recipe, int limit);

  /**
   * The slug of the one recipe whose id begins so, if there is one that is not in the bin.
   *
   * @param beginning lower-case hexadecimal digits
   */
  Optional<String> numbered(String beginning);

  /** What an author began with a recipe and has not finished, latest first. */
  Optional<Recall> unfinished(UUID recipe, @Nullable UUID session, Author author);

  /**
   * That a recipe was used.
   *
   * @param revision the state of it that was set up
   * @param session slug of the session that it was for; null: none
   * @param sessionTitle of that session; null: none
   */
  record Use(
      Instant at,
      Author author,
      int revision,
      @Nullable String session,
      @Nullable String sessionTitle) {}
}
