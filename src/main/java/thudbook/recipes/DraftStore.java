package thudbook.recipes;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;

/** Where it is kept what somebody is typing. */
public interface DraftStore {
  /**
   * Keeps a draft in place of an earlier one with the same key.
   *
   * @return whether it was kept: one that was sent earlier than what is there is not
   */
  boolean keep(Draft draft);

  /** A draft by its key. */
  Optional<Draft> find(UUID key);

  /** What an author has not finished, latest first. */
  List<Draft> unfinished(Author author, int limit);

  /** Throws a draft away; nothing happens if there is none. */
  void drop(UUID key);

  /**
   * What somebody is typing.
   *
   * @param key given out with the page on which it is typed
   * @param noun what it will be, such as {@code recipe}
   * @param subject the id of what is being changed; null: something new
   * @param version the version from which the typing began; null: something new
   * @param step rises with every pause in the typing
   * @param form what the page holds, as a JSON object: names of fields with lists of values, also
   *     of kinds that are not chosen
   */
  record Draft(
      UUID key,
      String noun,
      @Nullable UUID subject,
      @Nullable Long version,
      Author author,
      Instant keptAt,
      long step,
      String form) {}
}
