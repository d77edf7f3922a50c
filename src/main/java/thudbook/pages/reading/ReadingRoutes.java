package thudbook.pages.reading;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import java.util.function.Supplier;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.pages.frame.RevisionBanner;
import thudbook.photos.PhotoStore;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;

/** A recipe to read, also as plain text; the gates and each of them. */
public final class ReadingRoutes {
  private final Layout layout;
  private final Supplier<Listening> listening;
  private final RecipeStore recipes;
  private final Things<Gate> gates;
  private final Store<Module> modules;
  private final PhotoStore photos;
  private final Uses uses;

  public ReadingRoutes(Layout layout, Stores stores) {
    this.layout = layout;
    this.listening = stores::listening;
    this.recipes = stores.recipes();
    this.gates = stores.gates();
    this.modules = stores.modules();
    this.photos = stores.photos();
    this.uses = new Uses(stores.recalls());
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/recipes/{slug}", this::recipe)
        .get("/recipes/{slug}/text", this::text)
        .get("/gates", this::gates)
        .get("/gates/{slug}", this::gate);
  }

  private void recipe(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, recipes);
    if (!movedTo(context, "/recipes/", stored.thing().slug())) {
      HeardRecipe heard = listening.get().hear(stored.thing());
      RecipeSheet sheet =
          RecipeSheet.of(stored, heard, RecipeSheet.Relatives.of(stored.thing(), recipes));
      layout.show(
          context,
          "reading/recipe",
          sheet.recipe().title(),
          Frame.Section.RECIPES,
          Map.of(
              "sheet",
              sheet,
              "patch",
              PatchSheet.of(
                  heard, sheet.knobs(), Rack.of(modules), context.queryParam("touchy") != null),
              "photos",
              PhotoView.all(sheet.recipe(), photos),
              "lastUsed",
              uses.last(sheet.recipe())));
    }
  }

  private void text(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, recipes);
    PlainText text =
        PlainText.of(
            RecipeSheet.of(
                stored,
                listening.get().hear(stored.thing()),
                RecipeSheet.Relatives.of(stored.thing(), recipes)),
            stored.document());
    layout.show(
        context,
        "reading/text",
        text.title() + " as text",
        Frame.Section.RECIPES,
        Map.of("text", text));
  }

  private void gates(Context context) {
    layout.show(
        context,
        "reading/gates",
        "Gates",
        Frame.Section.GATES,
        Map.of("index", GateIndex.of(gates)));
  }

  private void gate(Context context) {
    Kept<Gate> stored = Requested.gate(context, gates);
    if (!movedTo(context, "/gates/", stored.thing().slug())) {
      GateSheet sheet = GateSheet.of(stored, recipes);
      layout.show(
          context,
          "reading/gate",
          sheet.gate().title(),
          Frame.Section.GATES,
          Map.of("sheet", sheet));
    }
  }

  /** Shows a recipe as it was. */
  public void earlierRecipe(Context context, Kept<Recipe> then, RevisionBanner banner) {
    RecipeSheet sheet =
        RecipeSheet.of(
            then,
            listening.get().hear(then.thing()),
            RecipeSheet.Relatives.of(then.thing(), recipes));
    layout.show(
        context,
        "reading/recipe",
        sheet.recipe().title() + ", revision " + then.revision(),
        Frame.Section.RECIPES,
        Map.of("sheet", sheet, "banner", banner, "photos", PhotoView.all(sheet.recipe(), photos)));
  }

  /** Shows a gate as it was. */
  public void earlierGate(Context context, Kept<Gate> then, RevisionBanner banner) {
    layout.show(
        context,
        "reading/gate",
        then.title() + ", revision " + then.revision(),
        Frame.Section.GATES,
        Map.of("sheet", GateSheet.of(then, recipes), "banner", banner));
  }

  /** An old slug, or an id, leads on to the address of today. */
  private static boolean movedTo(Context context, String folder, String slug) {
    if (context.pathParam("slug").equals(slug)) {
      return false;
    }
    context.redirect(folder + slug, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }
}
