package thudbook.pages;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.GateHistory;
import thudbook.equipment.GateStore;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.photos.PhotoStore;
import thudbook.quantities.Refusal;
import thudbook.recipes.Gates;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;

/** What recipes and gates were, and going back to it. */
final class HistoryRoutes {
  private static final String SAVED_SINCE =
      "Somebody saved it after you opened this page, so nothing was done. What was saved stands at"
          + " the top now; go back once more if you still want to.";

  private final Layout layout;
  private final RecipeStore recipes;
  private final GateHistory gates;
  private final PhotoStore photos;
  private final Recipes recipeActs;
  private final Gates gateActs;

  HistoryRoutes(Layout layout, Stores stores, Acts acts) {
    this.layout = layout;
    this.recipes = stores.recipes();
    this.gates = stores.gates();
    this.photos = stores.photos();
    this.recipeActs = acts.recipes();
    this.gateActs = acts.gates();
  }

  void addTo(JavalinConfig config) {
    config
        .routes
        .get("/recipes/{slug}/history", context -> showRecipe(context, recipe(context), ""))
        .get("/recipes/{slug}/history/{number}", this::recipeRevision)
        .post("/recipes/{slug}/history/{number}/restore", this::restoreRecipe)
        .get("/gates/{slug}/history", context -> showGate(context, gate(context), ""))
        .get("/gates/{slug}/history/{number}", this::gateRevision)
        .post("/gates/{slug}/history/{number}/restore", this::restoreGate);
  }

  private void showRecipe(Context context, RecipeStore.Stored stored, String notice) {
    HistorySheet sheet =
        HistorySheet.of(stored, recipes, gates, Requested.number(context, "below"), notice);
    show(context, sheet, Frame.Section.RECIPES);
  }

  private void showGate(Context context, GateStore.Stored stored, String notice) {
    int below = Requested.number(context, "below");
    HistorySheet sheet =
        HistorySheet.of(
            stored,
            gates.revisions(stored.gate().id(), below, HistorySheet.ROWS + 1),
            below,
            notice);
    show(context, sheet, Frame.Section.GATES);
  }

  private void show(Context context, HistorySheet sheet, Frame.Section section) {
    layout.show(context, "history", "History of " + sheet.title(), section, Map.of("sheet", sheet));
  }

  private void recipeRevision(Context context) {
    RecipeStore.Stored stored = recipe(context);
    Revision<Recipe> revision =
        recipes
            .revision(stored.recipe().id(), Requested.number(context))
            .orElseThrow(HistoryRoutes::noRevision);
    String slug = stored.recipe().slug();
    RevisionBanner banner =
        RevisionBanner.of(
            revision,
            stored.revision(),
            "/recipes/" + slug,
            "/compare?of=" + slug + "@" + revision.number() + "," + slug,
            stored.binnedAt() == null ? stored.version() : 0);
    RecipeSheet sheet =
        RecipeSheet.of(
            new RecipeStore.Stored(
                revision.noun(),
                stored.version(),
                revision.number(),
                revision.author(),
                stored.createdAt(),
                revision.at(),
                null,
                revision.document()),
            recipes,
            gates);
    layout.show(
        context,
        "recipe",
        sheet.recipe().title() + ", revision " + revision.number(),
        Frame.Section.RECIPES,
        Map.of("sheet", sheet, "banner", banner, "photos", PhotoView.all(sheet.recipe(), photos)));
  }

  private void gateRevision(Context context) {
    GateStore.Stored stored = gate(context);
    Revision<Gate> revision =
        gates
            .revision(stored.gate().id(), Requested.number(context))
            .orElseThrow(HistoryRoutes::noRevision);
    RevisionBanner banner =
        RevisionBanner.of(
            revision,
            stored.revision(),
            "/gates/" + stored.gate().slug(),
            "",
            stored.binnedAt() == null ? stored.version() : 0);
    GateSheet sheet =
        GateSheet.of(
            new GateStore.Stored(
                revision.noun(), stored.version(), revision.number(), null, revision.document()),
            recipes);
    layout.show(
        context,
        "gate",
        sheet.gate().title() + ", revision " + revision.number(),
        Frame.Section.GATES,
        Map.of("sheet", sheet, "banner", banner));
  }

  private void restoreRecipe(Context context) {
    RecipeStore.Stored stored = recipe(context);
    try {
      long change =
          recipeActs.restore(
              stored.recipe().id(),
              Requested.version(context),
              Requested.number(context),
              Author.OWNER,
              Documents::write);
      context.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      if (refusal.kind() != Refusal.Kind.STALE) {
        throw refusal;
      }
      context.status(HttpStatus.PRECONDITION_FAILED);
      showRecipe(context, recipe(context), SAVED_SINCE);
    }
  }

  private void restoreGate(Context context) {
    GateStore.Stored stored = gate(context);
    try {
      long change =
          gateActs.restore(
              stored.gate().id(),
              Requested.version(context),
              Requested.number(context),
              Author.OWNER,
              Documents::write);
      context.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      if (refusal.kind() != Refusal.Kind.STALE) {
        throw refusal;
      }
      context.status(HttpStatus.PRECONDITION_FAILED);
      showGate(context, gate(context), SAVED_SINCE);
    }
  }

  private RecipeStore.Stored recipe(Context context) {
    return Requested.recipe(context, recipes);
  }

  private GateStore.Stored gate(Context context) {
    return Requested.gate(context, gates);
  }

  private static Refusal noRevision() {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND, "no-such-revision", "There is no revision of this number.");
  }
}
