package thudbook.recipes;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;

/**
 * What one answer hears: recipes with the studio's gates of one moment. Each gate is looked up once
 * and each distinct sound is predicted once, when it is first asked for. For one thread, and for no
 * longer than an answer.
 */
public final class Listening {
  private final Studio studio;
  private final Model model;
  private final Map<Sound, Prediction> predicted = new HashMap<>();

  /** Listens with the gates of a studio. */
  public Listening(Things<Gate> studio) {
    this(
        studio,
        (sound, drawn) -> drawn ? Predictor.predictWithCurve(sound) : Predictor.predict(sound));
  }

  /** The same with a model of one's own. */
  public Listening(Things<Gate> studio, Model model) {
    this.studio = new Studio(studio);
    this.model = model;
  }

  /** Predicts a sound. */
  @FunctionalInterface
  public interface Model {
    /**
     * Predicts a sound.
     *
     * @param drawn whether its curve is wanted as well
     */
    Prediction predict(Sound sound, boolean drawn);
  }

  /** A recipe as it is heard. */
  public HeardRecipe hear(Recipe recipe) {
    return new HeardRecipe(recipe, Resolution.of(recipe, studio), this);
  }

  /**
   * What is predicted of a sound, with or without its curve. Where both are wanted, what is drawn
   * is asked for first.
   */
  public Prediction prediction(Sound sound) {
    return predicted.computeIfAbsent(sound, it -> model.predict(it, false));
  }

  /** What is predicted of a sound, with its curve. */
  public Prediction drawn(Sound sound) {
    Prediction known = predicted.get(sound);
    if (known == null || known.curve() == null) {
      known = model.predict(sound, true);
      predicted.put(sound, known);
    }
    return known;
  }

  /** The studio, in which each gate is looked up once. */
  public Things<Gate> studio() {
    return studio;
  }

  /** Gates that were looked up. */
  private static final class Studio implements Things<Gate> {
    private final Things<Gate> store;
    private final Map<String, Optional<Kept<Gate>>> found = new HashMap<>();
    private @Nullable List<Kept<Gate>> all;

    Studio(Things<Gate> store) {
      this.store = store;
    }

    @Override
    public Optional<Kept<Gate>> find(String slugOrId) {
      return found.computeIfAbsent(slugOrId, store::find);
    }

    @Override
    public List<Kept<Gate>> all() {
      List<Kept<Gate>> known = all;
      if (known == null) {
        known = store.all();
        all = known;
      }
      return known;
    }
  }
}
