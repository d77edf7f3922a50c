package thudbook.sessions;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;

/**
 * A recipe that was set up again, or is being.
 *
 * @param id given out with the sheet on which it is ticked off
 * @param recipe id of the recipe
 * @param revision the state of the recipe that was set up
 * @param session id of the session that it was for; null: none
 * @param finishedAt null: not yet
 * @param step rises with every tick, so that a late request does not write over a newer one
 * @param marks what was ticked and set otherwise, as the page holds it: a JSON object
 */
public record Recall(
    UUID id,
    UUID recipe,
    int revision,
    @Nullable UUID session,
    Author author,
    Instant begunAt,
    @Nullable Instant finishedAt,
    long step,
    String marks) {
  public Recall {
    if (revision < 1 || step < 0) {
      throw new IllegalArgumentException("revision " + revision + ", step " + step);
    }
  }

  /** The same recall, finished. */
  public Recall finished(Instant at) {
    return new Recall(
        id,
        recipe,
        revision,
        session,
        author,
        begunAt,
        at.isBefore(begunAt) ? begunAt : at,
        step,
        marks);
  }
}
