package thudbook.pages.finding;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Changes;
import thudbook.changes.Kept;
import thudbook.library.Likeness;
import thudbook.library.typed.Completion;
import thudbook.library.typed.SearchAddress;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.BackAddress;
import thudbook.pages.frame.DoneNotice;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.ListAddress;
import thudbook.pages.frame.Requested;
import thudbook.recipes.Recipe;
import thudbook.web.Visitors;

/** The list of recipes while it is searched, what is like a recipe, and favourites. */
public final class FindRoutes {
  private final Layout layout;
  private final Stores stores;
  private final Changes changes;

  public FindRoutes(Layout layout, Stores stores, Acts acts) {
    this.layout = layout;
    this.stores = stores;
    this.changes = acts.changes();
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/", this::list)
        .get("/found", this::found)
        .get("/completions", this::completions)
        .get("/recipes/{slug}/alike", this::alike)
        .post("/recipes/{slug}/favourite", this::favourite);
  }

  private void list(Context context) {
    Map<String, List<String>> parameters = context.queryParamMap();
    String canonical = canonical(parameters);
    if (canonical != null) {
      context.redirect(canonical, HttpStatus.SEE_OTHER);
      return;
    }
    RecipeIndex index = RecipeIndex.of(stores, parameters, Visitors.of(context).author());
    Map<String, Object> values = new HashMap<>(Map.of("index", index));
    DoneNotice.of(context.queryParam(DoneNotice.PARAMETER), changes, index.here())
        .ifPresent(done -> values.put("done", done));
    layout.show(context, "finding/recipes", "Recipes", Frame.Section.RECIPES, values);
  }

  /**
   * Where a form leads that sent its empty fields too; null: nothing is to be left out. What is not
   * understood stays in the address, so that it can be mended.
   */
  private static @Nullable String canonical(Map<String, List<String>> parameters) {
    boolean blank = parameters.values().stream().anyMatch(values -> values.contains(""));
    if (!blank) {
      return null;
    }
    SearchAddress.Read read = SearchAddress.read(parameters);
    return read.faults().isEmpty()
        ? ListAddress.of(read.address(), parameters.getOrDefault("after", List.of("")).get(0))
        : null;
  }

  /** The parts of the list that change while somebody types. */
  private void found(Context context) {
    RecipeIndex index =
        RecipeIndex.of(stores, context.queryParamMap(), Visitors.of(context).author());
    context
        .header("Cache-Control", "no-store")
        .html(layout.part("finding/found", Map.of("index", index)));
  }

  private void completions(Context context) {
    String text = Objects.requireNonNullElse(context.queryParam("text"), "");
    List<Completion.Suggestion> suggestions =
        new Completion(stores.library().vocabulary()).of(text);
    context
        .header("Cache-Control", "no-store")
        .html(layout.part("finding/completions", Map.of("suggestions", suggestions)));
  }

  private void alike(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, stores.recipes());
    if (stored.binnedAt() != null) {
      throw Requested.notFound(stored.thing().title() + " is in the bin.");
    }
    String by = Objects.requireNonNullElse(context.queryParam("by"), "shape");
    Likeness likeness;
    try {
      likeness = Likeness.valueOf(by.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw Requested.notFound("Recipes are alike by shape, settings or both.");
    }
    AlikeSheet sheet = AlikeSheet.of(stored, likeness, stores, Visitors.of(context).author());
    layout.show(
        context,
        "finding/alike",
        "Like " + sheet.title(),
        Frame.Section.RECIPES,
        Map.of("sheet", sheet));
  }

  private void favourite(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, stores.recipes());
    boolean favourite = "yes".equals(context.formParam("favourite"));
    stores.marks().favourite(stored.thing().id(), Visitors.of(context).author(), favourite);
    context.redirect(BackAddress.of(context) + "#r-" + stored.thing().slug(), HttpStatus.SEE_OTHER);
  }
}
