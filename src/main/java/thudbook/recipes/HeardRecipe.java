package thudbook.recipes;

import java.util.Optional;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;

/**
 * A recipe as it is heard: joined with the studio's gates, and predicted when it is first asked.
 *
 * @param listening the answer that it is heard in
 */
public record HeardRecipe(Recipe recipe, Resolution resolution, Listening listening) {
  /** Its sound, if nothing is missing. */
  public Optional<Sound> sound() {
    return resolution.complete();
  }

  /** What is predicted with its curve, if nothing is missing. */
  public Optional<Prediction> drawn() {
    return sound().map(listening::drawn);
  }

  /** Its predicted numbers, if nothing is missing. */
  public Optional<Metrics> metrics() {
    return sound().map(sound -> listening.prediction(sound).metrics());
  }
}
