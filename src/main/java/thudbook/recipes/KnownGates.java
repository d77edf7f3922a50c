package thudbook.recipes;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.changes.Things;
import thudbook.changes.Write;
import thudbook.equipment.Gate;

/**
 * The studio's gates as they are now, with gates that are about to be written. Each is read once:
 * many recipes share a few gates. For one thread and one act; later saves are not seen.
 */
public final class KnownGates implements Things<Gate> {
  private final Things<Gate> studio;
  private final Map<String, Optional<Kept<Gate>>> known = new HashMap<>();

  public KnownGates(Things<Gate> studio, List<Write<Gate>> written) {
    this.studio = studio;
    for (Write<Gate> write : written) {
      Optional<Kept<Gate>> stored = Optional.of(Kept.fresh(write.thing(), write.document()));
      known.put(write.thing().slug(), stored);
      known.put(write.thing().id().toString(), stored);
    }
  }

  /** The gates of some names, all looked up at once. */
  public static KnownGates named(Store<Gate> studio, Collection<String> names) {
    KnownGates gates = new KnownGates(studio, List.of());
    Map<String, Kept<Gate>> found = studio.named(names);
    names.forEach(name -> gates.known.put(name, Optional.ofNullable(found.get(name))));
    return gates;
  }

  @Override
  public Optional<Kept<Gate>> find(String slugOrId) {
    return known.computeIfAbsent(slugOrId, studio::find);
  }

  @Override
  public List<Kept<Gate>> all() {
    return studio.all();
  }
}
