package thudbook.pages.sharing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import thudbook.documents.exchange.Import;
import thudbook.photos.Photos;

/**
 * What was sent and looked at, and waits for a word. It is held in memory only, the latest few:
 * whoever comes back later sends it again.
 */
final class PendingImports {
  private static final int MOST = 3;

  private final Supplier<UUID> ids;
  private final Map<String, Pending> waiting = new LinkedHashMap<>();

  PendingImports(Supplier<UUID> ids) {
    this.ids = ids;
  }

  /** Documents with what they would change, and the photos that came with them. */
  record Pending(
      Import documents, List<Photos.Ready> photos, List<String> leftOut, List<String> columns) {
    Pending {
      photos = List.copyOf(photos);
      leftOut = List.copyOf(leftOut);
      columns = List.copyOf(columns);
    }
  }

  /** Holds one and returns the name under which it is found. */
  synchronized String hold(Pending pending) {
    while (waiting.size() >= MOST) {
      waiting.remove(waiting.keySet().iterator().next());
    }
    String name = ids.get().toString();
    waiting.put(name, pending);
    return name;
  }

  synchronized Optional<Pending> find(String name) {
    return Optional.ofNullable(waiting.get(name));
  }

  synchronized void drop(String name) {
    waiting.remove(name);
  }
}
