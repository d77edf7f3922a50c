package thudbook.storage;

import java.util.ArrayList;
import java.util.List;

/** Lists in parts, because SQLite takes a bounded number of values in one statement. */
final class Batches {
  private static final int AT_ONCE = 500;

  private Batches() {}

  /** The same items in the same order, in lists of a bearable size. */
  static <T> List<List<T>> of(List<T> items) {
    List<List<T>> parts = new ArrayList<>();
    for (int from = 0; from < items.size(); from += AT_ONCE) {
      parts.add(items.subList(from, Math.min(items.size(), from + AT_ONCE)));
    }
    return parts;
  }
}
