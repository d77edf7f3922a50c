package thudbook.pages.reading;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import thudbook.library.Library;
import thudbook.library.RecipeList;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.recipes.Listening;
import thudbook.recipes.RecipeStore;
import thudbook.web.Visitors;

/** Recipes side by side. */
public final class CompareRoutes {
  /** So many of the newest recipes are suggested. */
  private static final int SUGGESTED = 100;

  private final Layout layout;
  private final Supplier<Listening> listening;
  private final RecipeStore recipes;
  private final Library library;

  public CompareRoutes(Layout layout, Stores stores) {
    this.layout = layout;
    this.listening = stores::listening;
    this.recipes = stores.recipes();
    this.library = stores.library();
  }

  public void addTo(JavalinConfig config) {
    config.routes.get("/compare", this::compare);
  }

  /** Asked for as {@code of=a,b}, or from the form as {@code of=a,b&of=c}. */
  private void compare(Context context) {
    List<String> names =
        context.queryParams("of").stream().flatMap(of -> Arrays.stream(of.split(",", -1))).toList();
    Comparison comparison = Comparison.of(names, recipes, listening.get());
    List<RecipeList.Row> newest = library.newest(Visitors.of(context).author(), SUGGESTED);
    layout.show(
        context,
        "reading/compare",
        comparison.title(),
        Frame.Section.RECIPES,
        Map.of("comparison", comparison, "newest", newest));
  }
}
