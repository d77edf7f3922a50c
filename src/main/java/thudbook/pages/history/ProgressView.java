package thudbook.pages.history;

import java.util.Locale;
import thudbook.recipes.PredictionStore;

/**
 * How far the predictions are that a change has marked.
 *
 * @param recipes how many it marked
 * @param done how many of them are done
 */
public record ProgressView(int recipes, int done) {
  static ProgressView of(PredictionStore.Progress progress) {
    return new ProgressView(progress.recipes(), progress.recipes() - progress.waiting());
  }

  /** Whether nothing is left to do. */
  public boolean finished() {
    return done == recipes;
  }

  /** In words: "214 of 1,300 recipes predicted again". */
  public String words() {
    String all = recipes == 1 ? "1 recipe" : counted(recipes) + " recipes";
    return finished()
        ? all + " predicted again."
        : counted(done) + " of " + all + " predicted again so far.";
  }

  private static String counted(int number) {
    return String.format(Locale.ENGLISH, "%,d", number);
  }
}
