package thudbook.equipment;

import java.util.List;
import java.util.Optional;

/** Where the studio's gates are kept. */
public interface GateStore {
  /** A gate by its slug, an old slug, or its id as text. */
  Optional<Stored> find(String slugOrId);

  /** All gates that are not in the bin, by title. */
  List<Stored> all();

  /**
   * A gate as kept.
   *
   * @param version rises with every change; the entity tag
   * @param document its canonical text
   */
  record Stored(Gate gate, long version, String document) {}
}
