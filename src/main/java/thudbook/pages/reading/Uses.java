package thudbook.pages.reading;

import java.util.List;
import java.util.Optional;
import thudbook.changes.Kept;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.RecallStore;
import thudbook.wording.Reading;

/** When recipes were set up last, and for which session, in words. */
public final class Uses {
  private final RecallStore recalls;

  public Uses(RecallStore recalls) {
    this.recalls = recalls;
  }

  /** When a recipe was set up last; empty: never yet. */
  public String last(Recipe recipe) {
    List<RecallStore.Use> uses = recalls.uses(recipe.id(), 1);
    return uses.isEmpty() ? "" : words(uses.get(0));
  }

  private static String words(RecallStore.Use use) {
    String on = Reading.day(use.at());
    return use.sessionTitle() == null ? on : on + ", for " + use.sessionTitle();
  }

  /** The recipe of a slug, if there is one that is not in the bin. */
  public static Optional<Kept<Recipe>> standing(RecipeStore recipes, String slug) {
    return recipes.find(slug).filter(stored -> stored.binnedAt() == null);
  }
}
