package thudbook.documents;

import java.util.List;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;

/** Gates of a studio that is kept in memory. */
record KeptGates(List<Gate> gates) implements Things<Gate> {
  @Override
  public Optional<Kept<Gate>> find(String slugOrId) {
    return all().stream()
        .filter(
            g -> g.thing().slug().equals(slugOrId) || g.thing().id().toString().equals(slugOrId))
        .findFirst();
  }

  @Override
  public List<Kept<Gate>> all() {
    return gates.stream().map(g -> Kept.fresh(g, Documents.write(g))).toList();
  }
}
