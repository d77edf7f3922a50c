package thudbook.recipes;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import thudbook.equipment.GateStore;
import thudbook.recipes.Act.GateWrite;

/**
 * The studio's gates as they are now, with gates that are about to be written. Each is read once:
 * many recipes share a few gates. For one thread and one act; later saves are not seen.
 */
final class KnownGates implements GateStore {
  private final GateStore studio;
  private final Map<String, Optional<Stored>> known = new HashMap<>();

  KnownGates(GateStore studio, List<GateWrite> written) {
    this.studio = studio;
    for (GateWrite write : written) {
      Optional<Stored> stored = Optional.of(Stored.fresh(write.gate(), write.document()));
      known.put(write.gate().slug(), stored);
      known.put(write.gate().id().toString(), stored);
    }
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return known.computeIfAbsent(slugOrId, studio::find);
  }

  @Override
  public List<Stored> all() {
    return studio.all();
  }
}
