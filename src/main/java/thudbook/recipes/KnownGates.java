package thudbook.recipes;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import thudbook.equipment.GateStore;
import thudbook.recipes.RecipeStore.NewGate;

/**
 * The studio's gates as they are now, with gates that are about to be added. Each is read once:
 * many recipes share a few gates. For one thread and one act; later saves are not seen.
 */
final class KnownGates implements GateStore {
  private final GateStore studio;
  private final Map<String, Optional<Stored>> known = new HashMap<>();

  KnownGates(GateStore studio, List<NewGate> added) {
    this.studio = studio;
    for (NewGate gate : added) {
      known.put(gate.gate().slug(), Optional.of(new Stored(gate.gate(), 1, gate.document())));
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
