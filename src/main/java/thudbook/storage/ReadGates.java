package thudbook.storage;

import java.util.LinkedHashMap;
import java.util.Map;
import thudbook.equipment.Gate;

/**
 * Gates by their texts: most things that are asked need all gates of the studio, and reading their
 * documents takes far longer than fetching them.
 */
final class ReadGates {
  private static final int MOST = 256;

  private final Map<String, Gate> gates = new LinkedHashMap<>(MOST, 0.75f, true);

  /** The gate that a stored text says. */
  Gate of(String document) {
    synchronized (gates) {
      Gate known = gates.get(document);
      if (known != null) {
        return known;
      }
    }
    Gate read = StoredText.gate(document);
    synchronized (gates) {
      gates.put(document, read);
      if (gates.size() > MOST) {
        gates.remove(gates.keySet().iterator().next());
      }
    }
    return read;
  }
}
