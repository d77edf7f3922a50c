package thudbook.recipes;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;

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
   * How far the predictions are that a change of a gate has marked.
   *
   * @param change number of the change
   * @return empty if it marked none
   */
  Optional<Progress> progress(long change);

  /**
   * What recipes were before a change of a gate and are now, by title.
   *
   * @param change number of the change
   * @param offset how many to pass over
   * @param limit at least 1
   */
  List<Moved> moved(long change, int offset, int limit);

  /**
   * How far the predictions are that a change has marked.
   *
   * @param recipes how many it marked
   * @param waiting how many of them are not done
   */
  record Progress(int recipes, int waiting) {}

  /**
   * What a recipe was and is.
   *
   * @param before attack, hold, release40, peak and thump as they were; absent ones are left out
   * @param now the same today
   * @param reachBefore null: there was no prediction
   * @param reachNow null: there is none
   * @param waiting whether it is not done yet
   */
  record Moved(
      String slug,
      String title,
      Map<Metric, Double> before,
      Map<Metric, Double> now,
      @Nullable Reach reachBefore,
      @Nullable Reach reachNow,
      boolean waiting) {
    public Moved {
      before = Map.copyOf(before);
      now = Map.copyOf(now);
    }
  }

  /**
   * A recipe whose prediction is marked.
   *
   * @param key of the recipe in this store
   * @param generation number of the mark
   * @param recipe reads its document, which takes a while
   */
  record Marked(long key, long generation, Supplier<Recipe> recipe) {}

  /**
   * A new prediction for a mark.
   *
   * @param prediction null: something is missing in the recipe
   */
  record Remade(long key, long generation, @Nullable Prediction prediction) {}
}
