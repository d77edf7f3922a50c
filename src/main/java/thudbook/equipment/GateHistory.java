package thudbook.equipment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import thudbook.access.Revision;

/** A store of gates that remembers what they were. */
public interface GateHistory extends GateStore {
  /**
   * Saved states of a gate, newest first.
   *
   * @param below only revisions with lower numbers; 0: from the newest on
   * @param limit at least 1
   */
  List<Revision<Gate>> revisions(UUID gate, int below, int limit);

  /** One saved state of a gate. */
  Optional<Revision<Gate>> revision(UUID gate, int number);

  /** Whether a slug is taken by a gate, now or as an old name. */
  boolean slugTaken(String slug);

  /** Gates in the bin, latest first. */
  List<Stored> binned();
}
