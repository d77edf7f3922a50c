package thudbook.recipes;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;

/** Where recipes are kept, with every saved revision. */
public interface RecipeStore {
  /** A recipe by its slug, an old slug, or its id as text, also one that is in the bin. */
  Optional<Stored> find(String slugOrId);

  /** Whether a slug is taken by a recipe, now or as an old name. */
  boolean slugTaken(String slug);

  /**
   * Saved states of a recipe, newest first.
   *
   * @param below only revisions with lower numbers; 0: from the newest on
   * @param limit at least 1
   */
  List<Revision<Recipe>> revisions(UUID recipe, int below, int limit);

  /** One saved state of a recipe. */
  Optional<Revision<Recipe>> revision(UUID recipe, int number);

  /** What lies in the bin, latest first, so many at most. */
  List<Stored> binned(int limit);

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

  /**
   * A recipe as kept.
   *
   * @param version rises with every change of the representation; the entity tag
   * @param revision the number of the saved state that counts
   * @param binnedAt when it went into the bin; null: it is not there
   * @param document its canonical text
   */
  record Stored(
      Recipe recipe,
      long version,
      int revision,
      Author author,
      Instant createdAt,
      Instant changedAt,
      @Nullable Instant binnedAt,
      String document) {}
}
