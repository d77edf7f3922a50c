package thudbook.recipes;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Prediction;

/**
 * Where the predictions of recipes are kept, each with a mark when it no longer follows from what
 * is stored.
 */
public interface PredictionStore {
  /**
   * Marks every prediction that another version of the model made.
   *
   * @param model the version that counts
   * @return how many were marked
   */
  int markOthers(int model);

  /**
   * Recipes whose prediction is marked, in order of their keys.
   *
   * @param after only keys above this one; 0 for the first
   * @param limit at least 1
   */
  List<Marked> marked(long after, int limit);

  /**
   * Keeps predictions and takes their marks away, in one transaction. One whose recipe was marked
   * again in the meantime is left out: it was worked out from what was there before.
   *
   * @param model the version of the model that made them
   * @return how many were kept
   */
  int keep(List<Remade> remade, int model);

  /**
   * A recipe whose prediction is marked.
   *
   * @param key of the recipe in this store
   * @param generation number of the mark
   */
  record Marked(long key, long generation, Recipe recipe) {}

  /**
   * A new prediction for a mark.
   *
   * @param prediction null: something is missing in the recipe
   */
  record Remade(long key, long generation, @Nullable Prediction prediction) {}
}
