package thudbook.pages.writing;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.library.Facet;
import thudbook.library.Library;
import thudbook.library.RecipeList;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.StageEntry;

/**
 * Words that a form suggests: those of the tags in use and of the recipes that were written last.
 *
 * @param words by the name of the list
 * @param last the gate and the channel that were used last; null: none yet
 */
record Suggestions(Map<String, List<String>> words, @Nullable StageEntry last) {
  /** A studio is known from its latest patches; reading all of them would take too long. */
  private static final int LATEST = 30;

  static Suggestions of(Library library, RecipeStore recipes, Author author) {
    Map<String, Collection<String>> words = new HashMap<>();
    library.catalogue().labels(Facet.TAG).values().forEach(tag -> add(words, "tags", tag));
    StageEntry last = null;
    for (RecipeList.Row row : library.newest(author, LATEST)) {
      Recipe recipe = recipes.find(row.slug()).map(Kept::thing).orElse(null);
      if (recipe != null) {
        add(words, recipe);
        last = last == null ? used(recipe) : last;
      }
    }
    Map<String, List<String>> lists = new HashMap<>();
    words.forEach((name, found) -> lists.put(name, List.copyOf(found)));
    return new Suggestions(lists, last);
  }

  private static void add(Map<String, Collection<String>> words, Recipe recipe) {
    add(words, "people", recipe.by());
    recipe.with().forEach(person -> add(words, "people", person));
    add(words, "rooms", recipe.room());
    for (Recipe.Connection connection : recipe.connections()) {
      add(words, "outputs", connection.out());
      add(words, "inputs", connection.in());
    }
    for (Recipe.Setting setting : recipe.settings()) {
      add(words, "modules", setting.module());
      add(words, "controls", setting.control());
    }
    recipe.mix().forEach(mix -> add(words, "mixes", mix.into()));
    recipe.after().forEach(after -> add(words, "treatments", after.what()));
  }

  private static void add(
      Map<String, Collection<String>> words, String list, @Nullable String word) {
    if (word != null) {
      words.computeIfAbsent(list, name -> new TreeSet<>(String.CASE_INSENSITIVE_ORDER)).add(word);
    }
  }

  private static @Nullable StageEntry used(Recipe recipe) {
    return recipe.stages().stream()
        .filter(stage -> stage.gate() != null && stage.channel() != null)
        .findFirst()
        .orElse(null);
  }
}
