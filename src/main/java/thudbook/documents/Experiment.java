package thudbook.documents;

import java.util.List;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;

/**
 * A sound that is tried out.
 *
 * @param recipe the sound alone, as far as it is written; its name says nothing
 * @param gates of one channel each, for the channels that no gate of the studio has
 */
public record Experiment(Recipe recipe, List<Gate> gates) {
  public Experiment {
    gates = List.copyOf(gates);
  }

  /** The studio with the channels that are tried out. */
  public Things<Gate> in(Things<Gate> studio) {
    return new Things<Gate>() {
      @Override
      public Optional<Kept<Gate>> find(String slugOrId) {
        Optional<Gate> tried =
            gates.stream().filter(gate -> gate.id().toString().equals(slugOrId)).findFirst();
        return tried.isPresent()
            ? tried.map(gate -> Kept.fresh(gate, Documents.write(gate)))
            : studio.find(slugOrId);
      }

      @Override
      public List<Kept<Gate>> all() {
        return studio.all();
      }
    };
  }
}
