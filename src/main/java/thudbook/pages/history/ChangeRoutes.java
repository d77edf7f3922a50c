package thudbook.pages.history;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import thudbook.changes.Change;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.equipment.Gate;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.BackAddress;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/**
 * The bin, and what was done with undo. Each act is answered with the page of its change, which
 * offers to undo it at once.
 */
public final class ChangeRoutes {
  private static final int NEWEST = 100;

  private final Layout layout;
  private final RecipeStore recipes;
  private final Store<Gate> gates;
  private final PredictionStore predictions;
  private final Keeper<Recipe> recipeActs;
  private final Keeper<Gate> gateActs;
  private final Changes changes;
  private final List<BinSheet.Binned<?>> binned;

  public ChangeRoutes(Layout layout, Stores stores, Acts acts) {
    this.layout = layout;
    this.recipes = stores.recipes();
    this.gates = stores.gates();
    this.predictions = stores.predictions();
    this.recipeActs = acts.recipes();
    this.gateActs = acts.gates();
    this.changes = acts.changes();
    this.binned = binned(acts);
  }

  private static List<BinSheet.Binned<?>> binned(Acts acts) {
    List<BinSheet.Binned<?>> binned = new ArrayList<>();
    for (NounDocument<?> noun : acts.nouns()) {
      binned.add(
          noun == Documents.MODULE
              ? new BinSheet.Binned<>(
                  acts.modules(), "/equipment/", module -> module.label() + " " + module.title())
              : BinSheet.Binned.of(acts.changes().keeper(noun)));
    }
    return List.copyOf(binned);
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/bin", this::bin)
        .post("/bin/{noun}/{id}", this::takeOut)
        .post("/recipes/{slug}/bin", this::binRecipe)
        .post("/gates/{slug}/bin", this::binGate)
        .get("/changes", this::newest)
        .get("/changes/{id}", this::change)
        .get("/changes/{id}/progress", this::progress)
        .post("/changes/{id}/undo", this::undo);
  }

  private void bin(Context context) {
    layout.show(
        context, "history/bin", "Bin", Frame.Section.NONE, Map.of("sheet", BinSheet.of(binned)));
  }

  private void takeOut(Context context) {
    Keeper<?> acts =
        binned.stream()
            .filter(noun -> noun.name().equals(context.pathParam("noun")))
            .findFirst()
            .orElseThrow(() -> Requested.notFound("There is no such thing."))
            .acts();
    done(context, acts.unbin(Requested.id(context), Visitors.of(context).author()));
  }

  private void binRecipe(Context context) {
    Kept<Recipe> stored = Requested.recipe(context, recipes);
    done(
        context,
        recipeActs.bin(
            stored.thing().id(), Requested.version(context), Visitors.of(context).author()));
  }

  private void binGate(Context context) {
    Kept<Gate> stored = Requested.gate(context, gates);
    done(
        context,
        gateActs.bin(
            stored.thing().id(), Requested.version(context), Visitors.of(context).author()));
  }

  private void newest(Context context) {
    layout.show(
        context,
        "history/changes",
        "Changes",
        Frame.Section.NONE,
        Map.of("sheet", ChangeList.of(changes.newest(NEWEST))));
  }

  private void change(Context context) {
    Change change = found(Requested.change(context));
    // To know what is in the way everything that it touched is read, which takes long for many.
    List<Fault> obstacles =
        change.undoneBy() == null && change.count() <= Change.MOST_EFFECTS
            ? changes.obstacles(change.id())
            : List.of();
    show(context, change, obstacles, false);
  }

  private void progress(Context context) {
    ProgressView view =
        predictions
            .progress(Requested.change(context))
            .map(ProgressView::of)
            .orElseThrow(() -> Requested.notFound("This change has marked no prediction."));
    context
        .header("Cache-Control", "no-store")
        .html(layout.part("history/progress", Map.of("progress", view)));
  }

  private void undo(Context context) {
    Change change = found(Requested.change(context));
    try {
      long undone = changes.undo(change.id(), Visitors.of(context).author());
      if (BackAddress.isNamed(context)) {
        BackAddress.lead(context, undone);
      } else {
        done(context, undone);
      }
    } catch (Refusal refusal) {
      context.status(ErrorKind.of(refusal.kind()).status());
      show(context, found(change.id()), refusal.faults(), true);
    }
  }

  private void show(Context context, Change change, List<Fault> obstacles, boolean tried) {
    ChangeSheet sheet =
        ChangeSheet.of(change, obstacles, tried, predictions, Requested.number(context, "from"));
    layout.show(
        context, "history/change", sheet.title(), Frame.Section.NONE, Map.of("sheet", sheet));
  }

  private Change found(long id) {
    return changes
        .find(id)
        .orElseThrow(() -> Requested.notFound("There is no change of this number."));
  }

  private static void done(Context context, long change) {
    context.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }
}
