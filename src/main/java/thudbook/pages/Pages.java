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
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.library.Quantity;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.photos.PhotoStore;
import thudbook.quantities.Fault;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.ErrorKind;
import thudbook.web.ErrorPage;

/** The pages that people read. */
public final class Pages implements ErrorPage {
  private final Layout layout;
  private final RecipeStore recipes;
  private final Things<Gate> gates;
  private final Store<Module> modules;
  private final PhotoStore photos;
  private final Uses uses;
  private final EditorRoutes editor;
  private final GateEditorRoutes gateEditor;
  private final HistoryRoutes<Recipe> recipeHistory;
  private final HistoryRoutes<Gate> gateHistory;
  private final ChangeRoutes changes;
  private final CompareRoutes compare;
  private final FindRoutes find;
  private final SelectionRoutes selection;
  private final TagRoutes tags;
  private final ShelfRoutes shelves;

  /**
   * Pages over these stores.
   *
   * @param clock tells when a draft was kept
   * @param ids gives what is new, and drafts, their names
   */
  public Pages(
      Stores stores, Acts acts, AssetAddresses assets, InstantSource clock, Supplier<UUID> ids) {
    this.layout = new Layout(assets);
    this.recipes = stores.recipes();
    this.gates = stores.gates();
    this.modules = stores.modules();
    this.photos = stores.photos();
    this.uses = new Uses(stores.recalls());
    DraftRoutes drafts = new DraftRoutes(stores.drafts(), recipes, gates, clock);
    this.editor =
        new EditorRoutes(
            layout,
            recipes,
            new Editing(
                recipes, gates, modules, stores.library(), acts.recipes(), stores.drafts(), ids),
            drafts);
    this.gateEditor =
        new GateEditorRoutes(
            layout,
            stores.gates(),
            new GateEditing(stores.gates(), recipes, acts.gates(), stores.drafts(), ids),
            drafts);
    this.recipeHistory =
        new HistoryRoutes<>(
            layout,
            Documents.RECIPE,
            acts.recipes(),
            new HistoryRoutes.Subject<>(
                "/recipes/",
                Frame.Section.RECIPES,
                Recipe::title,
                (before, after) -> MovedNumbers.words(before, after, gates),
                true,
                this::earlierRecipe));
    this.gateHistory =
        new HistoryRoutes<>(
            layout,
            Documents.GATE,
            acts.gates(),
            new HistoryRoutes.Subject<>(
                "/gates/", Frame.Section.GATES, Gate::title, this::earlierGate));
    this.changes = new ChangeRoutes(layout, stores, acts);
    this.compare = new CompareRoutes(layout, stores);
    this.find = new FindRoutes(layout, stores, acts);
    this.selection = new SelectionRoutes(stores, acts);
    this.tags = new TagRoutes(layout, stores, acts);
    this.shelves = new ShelfRoutes(layout, stores, clock);
  }

  /** Adds the routes of all pages. */
  public void addTo(JavalinConfig config) {
    // Before recipes and gates: the address of a new one looks like a name.
    editor.addTo(config);
    gateEditor.addTo(config);
    recipeHistory.addTo(config);
    gateHistory.addTo(config);
    changes.addTo(config);
    compare.addTo(config);
    find.addTo(config);
    selection.addTo(config);
    tags.addTo(config);
    shelves.addTo(config);
    config
        .routes
        .get("/recipes/{slug}", this::recipe)
        .get("/recipes/{slug}/text", this::text)
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

  private void recipe(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, recipes);
    if (!movedTo(context, "/recipes/", stored.thing().slug())) {
      RecipeSheet sheet = RecipeSheet.of(stored, recipes, gates);
      layout.show(
          context,
          "recipe",
          sheet.recipe().title(),
          Frame.Section.RECIPES,
          Map.of(
              "sheet",
              sheet,
              "patch",
              PatchSheet.of(
                  sheet.recipe(),
                  sheet.knobs(),
                  Rack.of(modules),
                  gates,
                  context.queryParam("touchy") != null),
              "photos",
              PhotoView.all(sheet.recipe(), photos),
              "lastUsed",
              uses.last(sheet.recipe())));
    }
  }

  private void text(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, recipes);
    PlainText text = PlainText.of(RecipeSheet.of(stored, recipes, gates), stored.document());
    layout.show(
        context, "text", text.title() + " as text", Frame.Section.RECIPES, Map.of("text", text));
  }

  private void gates(Context context) {
    layout.show(
        context, "gates", "Gates", Frame.Section.GATES, Map.of("index", GateIndex.of(gates)));
  }

  private void gate(Context context) {
    Kept<Gate> stored = Requested.gate(context, gates);
    if (!movedTo(context, "/gates/", stored.thing().slug())) {
      GateSheet sheet = GateSheet.of(stored, recipes);
      layout.show(
          context, "gate", sheet.gate().title(), Frame.Section.GATES, Map.of("sheet", sheet));
    }
  }

  private void earlierRecipe(Context context, Kept<Recipe> then, RevisionBanner banner) {
    RecipeSheet sheet = RecipeSheet.of(then, recipes, gates);
    layout.show(
        context,
        "recipe",
        sheet.recipe().title() + ", revision " + then.revision(),
        Frame.Section.RECIPES,
        Map.of("sheet", sheet, "banner", banner, "photos", PhotoView.all(sheet.recipe(), photos)));
  }

  private void earlierGate(Context context, Kept<Gate> then, RevisionBanner banner) {
    layout.show(
        context,
        "gate",
        then.title() + ", revision " + then.revision(),
        Frame.Section.GATES,
        Map.of("sheet", GateSheet.of(then, recipes), "banner", banner));
  }

  private void helpIndex(Context context) {
    layout.show(context, "help/index", "Help", Frame.Section.HELP, Map.of());
  }

  private void help(Context context) {
    Help page =
        Help.find(context.pathParam("page"))
            .orElseThrow(() -> Requested.notFound("The help has no page of this name."));
    Map<String, Object> values =
        switch (page.slug()) {
          case "numbers" -> Map.of("numbers", MetricWords.all());
          case "finding" -> Map.of("quantities", List.of(Quantity.values()));
          default -> Map.of();
        };
    layout.show(context, page.template(), page.title(), Frame.Section.HELP, values);
  }

  private void errorHelp(Context context) {
    Remedy remedy =
        ErrorKind.ofSlug(context.pathParam("kind"))
            .map(Remedy::of)
            .orElseThrow(() -> Requested.notFound("The help has no page of this name."));
    layout.show(
        context, "help/error", remedy.kind().title(), Frame.Section.HELP, Map.of("remedy", remedy));
  }

  /** An old slug, or an id, leads on to the address of today. */
  private static boolean movedTo(Context context, String folder, String slug) {
    if (context.pathParam("slug").equals(slug)) {
      return false;
    }
    context.redirect(folder + slug, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }

  /** What every page is drawn with. */
  Layout layout() {
    return layout;
  }
}
