package thudbook.yardstick;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;

/** Gates that no store has yet. */
record Studio(Map<String, Gate> bySlug) implements Things<Gate> {
  @Override
  public Optional<Kept<Gate>> find(String slugOrId) {
    return Optional.ofNullable(bySlug.get(slugOrId))
        .map(gate -> Kept.fresh(gate, Documents.write(gate)));
  }

  @Override
  public List<Kept<Gate>> all() {
    return bySlug.values().stream().map(gate -> Kept.fresh(gate, Documents.write(gate))).toList();
  }
}
