package thudbook.changes;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import thudbook.access.Author;

/** Where acts are kept. Each is one change: all of it is written, or nothing. */
public interface ChangeStore {
  /** Whether nothing was ever written. */
  boolean isEmpty();

  /**
   * A number that rises whenever a thing of a noun is written, thrown into the bin or taken out.
   * What was derived from an earlier state is told by it.
   */
  long state(Noun<?> noun);

  /**
   * Does an act.
   *
   * @param what the act in words, such as "loaded the sample library"
   * @return the number of the change
   * @throws thudbook.quantities.Refusal of kind CONFLICT with every id and slug that is taken, of
   *     kind STALE with every thing that has another version than the act expects
   */
  long write(Act act, Author author, Instant at, String what);

  /** A change by its number. */
  Optional<Change> find(long id);

  /** The latest changes, newest first. */
  List<Change> newest(int limit);

  /**
   * The act that undoes a change: things get back the text of the revision before, what was added
   * goes into the bin, what was thrown there comes out. What is derived is not known yet.
   *
   * @throws thudbook.quantities.Refusal of kind NOT_FOUND if there is no such change, of kind
   *     CONFLICT if it was undone before or something of it was changed since
   */
  Act undoing(long id);
}
