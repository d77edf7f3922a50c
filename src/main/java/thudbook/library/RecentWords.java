package thudbook.library;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.roaringbitmap.RoaringBitmap;
import thudbook.library.WordIndex.Place;

/**
 * Where words were found lately, until anything is written: while somebody types on, and for the
 * counts beside a list, they are looked up once.
 */
final class RecentWords {
  private static final int MOST = 64;

  private final Catalogue catalogue;
  private final Map<Key, RoaringBitmap> found = new LinkedHashMap<>(MOST, 0.75f, true);
  private long version = -1;

  RecentWords(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  private record Key(Term term, Set<Place> places) {}

  /** What was found; nobody may change it. */
  RoaringBitmap get(Term term, Set<Place> places, Supplier<RoaringBitmap> lookUp) {
    Key key = new Key(term, Set.copyOf(places));
    // Asked before the words are looked up: a commit that comes in between makes this useless.
    long now = catalogue.version();
    synchronized (found) {
      if (version != now) {
        found.clear();
        version = now;
      }
      RoaringBitmap known = found.get(key);
      if (known != null) {
        return known;
      }
    }
    RoaringBitmap fresh = lookUp.get();
    synchronized (found) {
      if (version == now) {
        found.put(key, fresh);
        if (found.size() > MOST) {
          found.remove(found.keySet().iterator().next());
        }
      }
    }
    return fresh;
  }
}
