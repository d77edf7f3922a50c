package thudbook.library;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Where words were found lately, until anything is written: while somebody types on, and for the
 * counts beside a list, they are looked up once.
 */
final class RecentWords {
  private static final int MOST = 64;

  private final Catalogue catalogue;
  private final Map<Term, WordHits> found = new LinkedHashMap<>(MOST, 0.75f, true);
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
        version = now;
      }
      WordHits known = found.get(term);
      if (known != null) {
        return known;
      }
    }
    WordHits fresh = lookUp.get();
    synchronized (found) {
      if (version == now) {
        found.put(term, fresh);
        if (found.size() > MOST) {
          found.remove(found.keySet().iterator().next());
        }
      }
    }
    return fresh;
  }
}
