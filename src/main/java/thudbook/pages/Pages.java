package thudbook.pages;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.GateStore;
import thudbook.library.RecipeList;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.DraftStore;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.recipes.Resolution;
import thudbook.web.ErrorKind;
import thudbook.web.ErrorPage;

/** The pages that people read. */
public final class Pages implements ErrorPage {
  private final Layout layout;
  private final RecipeStore recipes;
  private final GateStore gates;
  private final RecipeList list;
  private final EditorRoutes editor;

  /**
   * Pages over these stores.
   *
   * @param acts what can be done with recipes
   * @param clock tells when a draft was kept
   * @param ids gives new recipes and drafts their names
   */
  public Pages(
      RecipeStore recipes,
      GateStore gates,
      RecipeList list,
      AssetAddresses assets,
      Recipes acts,
      DraftStore drafts,
      InstantSource clock,
      Supplier<UUID> ids) {
    this.layout = new Layout(assets);
    this.recipes = recipes;
    this.gates = gates;
    this.list = list;
    this.editor =
        new EditorRoutes(
            layout,
            recipes,
            new Editing(recipes, gates, list, acts, drafts, ids),
            new DraftRoutes(drafts, recipes, clock));
  }

  /** Adds the routes of all pages. */
  public void addTo(JavalinConfig config) {
    // Before the recipes: the address of a new one looks like a name.
    editor.addTo(config);
    config
        .routes
        .get("/", this::recipes)
        .get("/recipes/{slug}", this::recipe)
        .get("/gates", this::gates)
        .get("/gates/{slug}", this::gate)
        .get("/help", this::helpIndex)
        .get("/help/{page}", this::help)
        .get("/help/errors/{kind}", this::errorHelp);
  }

  @Override
  public String html(ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    ErrorSheet sheet = ErrorSheet.of(kind, faults, requestId);
    return layout.fill("error", kind.title(), Frame.Section.NONE, Map.of("sheet", sheet));
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
    RecipeIndex index = RecipeIndex.of(list, request, this::missing);
    layout.show(context, "recipes", index.title(), Frame.Section.RECIPES, Map.of("index", index));
  }

  private List<String> missing(String slug) {
    return recipes
        .find(slug)
        .map(stored -> Resolution.of(stored.recipe(), gates).missing())
        .orElse(List.of());
  }

  private void recipe(Context context) {
    String name = context.pathParam("slug");
    RecipeStore.Stored stored =
        recipes.find(name).orElseThrow(() -> notFound("The notebook has no recipe of this name."));
    if (!movedTo(context, "/recipes/", name, stored.recipe().slug())) {
      RecipeSheet sheet = RecipeSheet.of(stored, recipes, gates);
      layout.show(
          context, "recipe", sheet.recipe().title(), Frame.Section.RECIPES, Map.of("sheet", sheet));
    }
  }

  private void gates(Context context) {
    layout.show(
        context, "gates", "Gates", Frame.Section.GATES, Map.of("index", GateIndex.of(gates)));
  }

  private void gate(Context context) {
    String name = context.pathParam("slug");
    GateStore.Stored stored =
        gates.find(name).orElseThrow(() -> notFound("The studio has no gate of this name."));
    if (!movedTo(context, "/gates/", name, stored.gate().slug())) {
      GateSheet sheet = GateSheet.of(stored, recipes);
      layout.show(
          context, "gate", sheet.gate().title(), Frame.Section.GATES, Map.of("sheet", sheet));
    }
  }

  private void helpIndex(Context context) {
    layout.show(context, "help/index", "Help", Frame.Section.HELP, Map.of());
  }

  private void help(Context context) {
    Help page =
        Help.find(context.pathParam("page"))
            .orElseThrow(() -> notFound("The help has no page of this name."));
    Map<String, Object> values =
        page.slug().equals("numbers") ? Map.of("numbers", MetricWords.all()) : Map.of();
    layout.show(context, page.template(), page.title(), Frame.Section.HELP, values);
  }

  private void errorHelp(Context context) {
    Remedy remedy =
        ErrorKind.ofSlug(context.pathParam("kind"))
            .map(Remedy::of)
            .orElseThrow(() -> notFound("The help has no page of this name."));
    layout.show(
        context, "help/error", remedy.kind().title(), Frame.Section.HELP, Map.of("remedy", remedy));
  }

  /** An old slug, or an id, leads on to the address of today. */
  private static boolean movedTo(Context context, String folder, String asked, String slug) {
    if (asked.equals(slug)) {
      return false;
    }
    context.redirect(folder + slug, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }

  private static Refusal notFound(String message) {
    return Refusal.of(Refusal.Kind.NOT_FOUND, "not-found", message);
  }
}
