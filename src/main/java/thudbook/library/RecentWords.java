package thudbook.library;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Where words were found lately, until anything is written: while somebody types on, for the counts
 * beside a list, and for words that many look for, they are looked up once.
 */
final class RecentWords {
  /** What all of them may take in memory. */
  private static final long MOST_BYTES = 32L << 20;

  private final Catalogue catalogue;
  private final Map<Term, WordHits> found = new LinkedHashMap<>(64, 0.75f, true);
  private long bytes;
  private long version = -1;

  RecentWords(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** What was found; nobody may change it. */
  WordHits get(Term term, Supplier<WordHits> lookUp) {
    // Asked before the words are looked up: a commit that comes in between makes this useless.
    long now = catalogue.version();
    synchronized (found) {
      if (version != now) {
        found.clear();
        bytes = 0;
        version = now;
      }
      WordHits known = found.get(term);
      if (known != null) {
        return known;
      }
    }
    WordHits fresh = lookUp.get();
    synchronized (found) {
      if (version == now && found.putIfAbsent(term, fresh) == null) {
        bytes += fresh.bytes();
        forgetOldest();
      }
    }
    return fresh;
  }

  private void forgetOldest() {
    Iterator<WordHits> oldest = found.values().iterator();
    while (bytes > MOST_BYTES && oldest.hasNext()) {
      bytes -= oldest.next().bytes();
      oldest.remove();
    }
  }
}
