package thudbook.equipment;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where the studio's gates are kept. */
public interface GateStore {
  /** A gate by its slug, an old slug, or its id as text, also one that is in the bin. */
  Optional<Stored> find(String slugOrId);

  /** All gates that are not in the bin, by title. */
  List<Stored> all();

  /**
   * A gate as kept.
   *
   * @param version rises with every change; the entity tag
   * @param revision the number of the saved state that counts
   * @param binnedAt when it went into the bin; null: it is not there
   * @param document its canonical text
   */
  record Stored(
      Gate gate, long version, int revision, @Nullable Instant binnedAt, String document) {
    /** A gate that was just read, with no history. */
    public static Stored fresh(Gate gate, String document) {
      return new Stored(gate, 1, 1, null, document);
    }
  }
}
