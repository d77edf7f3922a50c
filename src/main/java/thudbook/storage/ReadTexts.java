package thudbook.storage;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What stored texts say, as far as they were read lately: much that is asked needs all gates and
 * modules of the studio, and reading their documents takes far longer than fetching them.
 *
 * @param <T> what the documents say
 */
final class ReadTexts<T> {
  private static final int MOST = 256;

  private final Function<String, T> reader;
  private final Map<String, T> known = new LinkedHashMap<>(MOST, 0.75f, true);

  ReadTexts(Function<String, T> reader) {
    this.reader = reader;
  }

  /** What a stored text says. */
  T of(String document) {
    synchronized (known) {
      T said = known.get(document);
      if (said != null) {
        return said;
      }
    }
    T read = reader.apply(document);
    synchronized (known) {
      T meanwhile = known.putIfAbsent(document, read);
      if (known.size() > MOST) {
        known.remove(known.keySet().iterator().next());
      }
      return meanwhile == null ? read : meanwhile;
    }
  }
}
