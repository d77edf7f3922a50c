package thudbook.yardstick;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;

/** Gates that no store has yet. */
record Studio(Map<String, Gate> bySlug) implements GateStore {
  @Override
  public Optional<Stored> find(String slugOrId) {
    return Optional.ofNullable(bySlug.get(slugOrId))
        .map(gate -> Stored.fresh(gate, Documents.write(gate)));
  }

  @Override
  public List<Stored> all() {
    return bySlug.values().stream().map(gate -> Stored.fresh(gate, Documents.write(gate))).toList();
  }
}
