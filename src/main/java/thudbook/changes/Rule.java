package thudbook.changes;

import java.util.List;
import thudbook.quantities.Fault;

/**
 * What has to hold before things of a noun are written, and what is derived from them.
 *
 * @param <T> what kind of things
 */
public interface Rule<T extends Thing> {
  /** What stands in the way of an act, as far as this noun knows; none: nothing does. */
  default List<Fault> obstacles(Act act) {
    return List.of();
  }

  /** The writes of an act with what is derived from each. */
  default List<Write<T>> complete(List<Write<T>> writes, Act act) {
    return writes;
  }
}
