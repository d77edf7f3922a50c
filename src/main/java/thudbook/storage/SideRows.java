package thudbook.storage;

import java.util.List;
import thudbook.changes.Binning;
import thudbook.changes.Thing;
import thudbook.changes.Write;

/**
 * What hangs on the things of a noun, during one act; on most hangs nothing.
 *
 * @param <T> what kind of things
 */
class SideRows<T extends Thing> {
  /** Takes away rows of things that are written anew. */
  void clear(List<Long> things) {}

  /** Adds the rows of a thing. */
  void add(long thing, Write<T> write) {}

  /** What follows when all rows of the noun's things are there. */
  void written(List<Write<T>> writes) {}

  /** What follows when a thing went into the bin or came out of it. */
  void moved(long thing, Binning binning) {}
}
