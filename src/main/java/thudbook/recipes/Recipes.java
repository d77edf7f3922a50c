package thudbook.recipes;

import java.time.InstantSource;
import java.util.List;
import thudbook.access.Author;
import thudbook.equipment.GateStore;
import thudbook.predictions.Predictor;
import thudbook.recipes.RecipeStore.NewGate;
import thudbook.recipes.RecipeStore.NewRecipe;

/** What can be done with recipes: each act is one change, and what it writes is predicted. */
public final class Recipes {
  private final RecipeStore store;
  private final GateStore studio;
  private final InstantSource clock;

  /** Acts on the recipes and gates of a notebook. */
  public Recipes(RecipeStore store, GateStore studio, InstantSource clock) {
    this.store = store;
    this.studio = studio;
    this.clock = clock;
  }

  /**
   * A recipe with its canonical text.
   *
   * @param document what is kept
   */
  public record Written(Recipe recipe, String document) {}

  /**
   * Loads the sample library into a notebook in which nothing was ever written: once, and not again
   * when its recipes were thrown away.
   *
   * @return whether it was loaded
   * @throws thudbook.quantities.Refusal if two of the samples have the same id or slug
   */
  public boolean loadSamples(List<NewGate> gates, List<Written> recipes) {
    if (!store.isEmpty()) {
      return false;
    }
    add(gates, recipes, Author.SAMPLES, "loaded the sample library");
    return true;
  }

  /**
   * Adds gates and recipes in one change, all or nothing. The recipes may use the gates that come
   * with them.
   *
   * @param what the act in words
   * @throws thudbook.quantities.Refusal with every id and slug that is taken
   */
  public void add(List<NewGate> gates, List<Written> recipes, Author author, String what) {
    GateStore known = new KnownGates(studio, gates);
    List<NewRecipe> predicted =
        recipes.stream()
            .map(
                written ->
                    new NewRecipe(
                        written.recipe(),
                        written.document(),
                        Resolution.of(written.recipe(), known)
                            .complete()
                            .map(Predictor::predict)
                            .orElse(null)))
            .toList();
    store.add(gates, predicted, author, clock.instant(), what);
  }
}
