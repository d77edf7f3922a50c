package thudbook.recipes;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Act;
import thudbook.changes.ChangeStore;
import thudbook.changes.Noun;
import thudbook.changes.Rule;
import thudbook.changes.Things;
import thudbook.changes.Write;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;

/** Recipes are predicted, with the studio's gates and those that come with them. */
public final class RecipeRule implements Rule<Recipe> {
  private final ChangeStore changes;
  private final Noun<Gate> gate;
  private final Things<Gate> studio;

  /** Predicts with the gates of a studio. */
  public RecipeRule(ChangeStore changes, Noun<Gate> gate, Things<Gate> studio) {
    this.changes = changes;
    this.gate = gate;
    this.studio = studio;
  }

  @Override
  public List<Write<Recipe>> complete(List<Write<Recipe>> writes, Act act) {
    if (writes.isEmpty()) {
      return writes;
    }
    // Asked before the gates are read: a gate that is saved from now on marks the predictions.
    long state = changes.state(gate);
    Things<Gate> known = new KnownGates(studio, act.writes(gate));
    return writes.stream()
        .map(
            write ->
                write.derived() == null
                    ? write.with(new Predicted(predict(write.thing(), known), state))
                    : write)
        .toList();
  }

  private static @Nullable Prediction predict(Recipe recipe, Things<Gate> gates) {
    return Resolution.of(recipe, gates).complete().map(Predictor::predict).orElse(null);
  }
}
