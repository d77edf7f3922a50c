package thudbook.recipes;

import java.util.List;
import java.util.UUID;
import thudbook.changes.Store;

/** Where recipes are kept, and what ties them to each other and to gates. */
public interface RecipeStore extends Store<Recipe> {
  /**
   * The recipes that are derived from one, by title, so many at most; none that is in the bin.
   *
   * @param limit at least 1
   */
  List<Variation> variations(UUID recipe, int limit);

  /** A recipe that varies another one. */
  record Variation(String slug, String title) {}

  /** The recipes that are played through a gate, by title. */
  List<Use> using(UUID gate);

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
}
