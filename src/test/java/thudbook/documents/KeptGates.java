package thudbook.documents;

import java.util.List;
import java.util.Optional;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;

/** Gates of a studio that is kept in memory. */
record KeptGates(List<Gate> gates) implements GateStore {
  @Override
  public Optional<Stored> find(String slugOrId) {
    return all().stream()
        .filter(g -> g.gate().slug().equals(slugOrId) || g.gate().id().toString().equals(slugOrId))
        .findFirst();
  }

  @Override
  public List<Stored> all() {
    return gates.stream().map(g -> Stored.fresh(g, Documents.write(g))).toList();
  }
}
