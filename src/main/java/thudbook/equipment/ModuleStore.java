package thudbook.equipment;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Revision;

/** Where the studio's modules are kept, and what they were. */
public interface ModuleStore {
  /** A module by its slug, an old slug, or its id as text, also one that is in the bin. */
  Optional<Stored> find(String slugOrId);

  /** All modules that are not in the bin, by label. */
  List<Stored> all();

  /** The modules that are not in the bin, to look labels and ports up in. */
  default Rack rack() {
    return new Rack(all().stream().map(Stored::module).toList());
  }

  /**
   * Saved states of a module, newest first.
   *
   * @param below only revisions with lower numbers; 0: from the newest on
   * @param limit at least 1
   */
  List<Revision<Module>> revisions(UUID module, int below, int limit);

  /** One saved state of a module. */
  Optional<Revision<Module>> revision(UUID module, int number);

  /** Whether a slug is taken by a module, now or as an old name. */
  boolean slugTaken(String slug);

  /** Modules in the bin, latest first. */
  List<Stored> binned();

  /**
   * A module as kept.
   *
   * @param version rises with every change; the entity tag
   * @param revision the number of the saved state that counts
   * @param binnedAt when it went into the bin; null: it is not there
   * @param document its canonical text
   */
  record Stored(
      Module module, long version, int revision, @Nullable Instant binnedAt, String document) {
    /** A module that was just read, with no history. */
    public static Stored fresh(Module module, String document) {
      return new Stored(module, 1, 1, null, document);
    }
  }
}
