package thudbook.recipes;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;

/** Where recipes are kept, with every saved revision. */
public interface RecipeStore {
  /** A recipe by its slug, an old slug, or its id as text. */
  Optional<Stored> find(String slugOrId);

  /** Whether a slug is taken by a recipe, now or as an old name. */
  boolean slugTaken(String slug);

  /**
   * Adds recipes and gates in one change, all or nothing.
   *
   * @param what the act in words, such as "loaded the sample library"
   */
  void add(List<NewGate> gates, List<NewRecipe> recipes, Author author, Instant at, String what);

  /** The recipes that are played through a gate, by title. */
  List<Use> using(UUID gate);

  /** Whether nothing was ever written. */
  boolean isEmpty();

  /**
   * A recipe that uses a gate.
   *
   * @param channels names of the channels that it uses, in the order of its stages
   */
  record Use(String slug, String title, List<String> channels) {
    public Use {
      channels = List.copyOf(channels);
    }
  }

  /** A gate to be added, with its canonical text. */
  record NewGate(Gate gate, String document) {}

  /**
   * A recipe to be added.
   *
   * @param document its canonical text
   * @param prediction null: not complete
   */
  record NewRecipe(Recipe recipe, String document, @Nullable Prediction prediction) {}

  /**
   * A recipe as kept.
   *
   * @param version rises with every change of the representation; the entity tag
   * @param document its canonical text
   */
  record Stored(
      Recipe recipe,
      long version,
      Author author,
      Instant createdAt,
      Instant changedAt,
      String document) {}
}
