package thudbook.recipes;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.GateStore;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.RecipeWrite;

/** Makes acts whose recipes are predicted with the studio's gates and those that come with them. */
final class Predicting {
  private final ChangeStore changes;
  private final GateStore studio;

  Predicting(ChangeStore changes, GateStore studio) {
    this.changes = changes;
    this.studio = studio;
  }

  Act act(List<GateWrite> gates, List<RecipeWrite> recipes, List<Binning> binnings) {
    return act(gates, recipes, binnings, null);
  }

  Act act(
      List<GateWrite> gates,
      List<RecipeWrite> recipes,
      List<Binning> binnings,
      @Nullable Long undoes) {
    // Asked before the gates are read: a gate that is saved from now on marks the predictions.
    long state = changes.studio();
    GateStore known = new KnownGates(studio, gates);
    return new Act(
        gates,
        recipes.stream()
            .map(
                write ->
                    write.sameSound() ? write : write.predicted(predict(write.recipe(), known)))
            .toList(),
        binnings,
        state,
        undoes);
  }

  private static @Nullable Prediction predict(Recipe recipe, GateStore gates) {
    return Resolution.of(recipe, gates).complete().map(Predictor::predict).orElse(null);
  }
}
