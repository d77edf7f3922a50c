package thudbook.pages;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.GateStore;
import thudbook.library.RecipeList;
import thudbook.quantities.Refusal;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Resolution;

/** The pages that people read. */
public final class Pages {
  private final Templates templates = new Templates();
  private final RecipeStore recipes;
  private final GateStore gates;
  private final RecipeList list;
  private final AssetAddresses assets;

  /** Pages over these stores. */
  public Pages(RecipeStore recipes, GateStore gates, RecipeList list, AssetAddresses assets) {
    this.recipes = recipes;
    this.gates = gates;
    this.list = list;
    this.assets = assets;
  }

  /** Adds the routes of all pages. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/", this::recipes)
        .get("/recipes/{slug}", this::recipe)
        .get("/gates", this::gates)
        .get("/gates/{slug}", this::gate)
        .get("/help", this::helpIndex)
        .get("/help/{page}", this::help)
        .get("/help/errors/{kind}", this::problemHelp);
  }

  /**
   * The page that says what went wrong, as HTML.
   *
   * @param status of the answer, such as 404
   * @param message what a reader should know; never internals
   */
  public String problem(int status, String message) {
    Problem problem = Problem.of(status, message);
    return fill("problem", problem.title(), Frame.Section.NONE, Map.of("problem", problem));
  }

  private void recipes(Context context) {
    String tag = context.queryParam("tag");
    RecipeList.Request request =
        new RecipeList.Request(
            "title".equals(context.queryParam("order"))
                ? RecipeList.Order.TITLE
                : RecipeList.Order.NEWEST,
            tag == null || tag.isBlank() ? null : tag,
            RecipeIndex.ROWS,
            context.queryParam("after"));
    RecipeIndex index;
    try {
      index = RecipeIndex.of(list, request, this::missing);
    } catch (Refusal refusal) {
      refuse(
          context,
          HttpStatus.BAD_REQUEST,
          "This page of the list is gone. Start again from its first page.");
      return;
    }
    show(context, "recipes", index.title(), Frame.Section.RECIPES, Map.of("index", index));
  }

  private List<String> missing(String slug) {
    return recipes
        .find(slug)
        .map(stored -> Resolution.of(stored.recipe(), gates).missing())
        .orElse(List.of());
  }

  private void recipe(Context context) {
    String name = context.pathParam("slug");
    Optional<RecipeStore.Stored> found = recipes.find(name);
    if (found.isEmpty()) {
      refuse(context, HttpStatus.NOT_FOUND, "The notebook has no recipe of this name.");
    } else if (!movedTo(context, "/recipes/", name, found.get().recipe().slug())) {
      RecipeSheet sheet = RecipeSheet.of(found.get(), recipes, gates);
      show(
          context, "recipe", sheet.recipe().title(), Frame.Section.RECIPES, Map.of("sheet", sheet));
    }
  }

  private void gates(Context context) {
    show(context, "gates", "Gates", Frame.Section.GATES, Map.of("index", GateIndex.of(gates)));
  }

  private void gate(Context context) {
    String name = context.pathParam("slug");
    Optional<GateStore.Stored> found = gates.find(name);
    if (found.isEmpty()) {
      refuse(context, HttpStatus.NOT_FOUND, "The studio has no gate of this name.");
    } else if (!movedTo(context, "/gates/", name, found.get().gate().slug())) {
      GateSheet sheet = GateSheet.of(found.get(), recipes);
      show(context, "gate", sheet.gate().title(), Frame.Section.GATES, Map.of("sheet", sheet));
    }
  }

  private void helpIndex(Context context) {
    show(context, "help/index", "Help", Frame.Section.HELP, Map.of());
  }

  private void help(Context context) {
    Optional<Help> page = Help.find(context.pathParam("page"));
    if (page.isEmpty()) {
      refuse(context, HttpStatus.NOT_FOUND, "The help has no page of this name.");
    } else {
      Map<String, Object> values =
          page.get().slug().equals("numbers") ? Map.of("numbers", MetricWords.all()) : Map.of();
      show(context, page.get().template(), page.get().title(), Frame.Section.HELP, values);
    }
  }

  private void problemHelp(Context context) {
    Optional<ProblemHelp> kind = ProblemHelp.find(context.pathParam("kind"));
    if (kind.isEmpty()) {
      refuse(context, HttpStatus.NOT_FOUND, "The help has no page of this name.");
    } else {
      show(
          context,
          "help/error",
          kind.get().title(),
          Frame.Section.HELP,
          Map.of("kind", kind.get()));
    }
  }

  /** An old slug, or an id, leads on to the address of today. */
  private static boolean movedTo(Context context, String folder, String asked, String slug) {
    if (asked.equals(slug)) {
      return false;
    }
    context.redirect(folder + slug, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }

  private void show(
      Context context,
      String template,
      String title,
      Frame.Section section,
      Map<String, Object> values) {
    context.html(fill(template, title, section, values));
  }

  private void refuse(Context context, HttpStatus status, String message) {
    context.status(status).html(problem(status.getCode(), message));
  }

  private String fill(String template, String title, Frame.Section section, Map<String, ?> values) {
    Map<String, @Nullable Object> all = new HashMap<>(values);
    all.put("frame", new Frame(title, section, assets));
    return templates.fill(template, all);
  }
}
