package thudbook.pages;

import io.javalin.config.JavalinConfig;
import java.net.URI;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.finding.FindRoutes;
import thudbook.pages.finding.SelectionRoutes;
import thudbook.pages.finding.ShelfRoutes;
import thudbook.pages.finding.TagRoutes;
import thudbook.pages.frame.AssetAddresses;
import thudbook.pages.frame.ErrorSheet;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.help.HelpRoutes;
import thudbook.pages.history.ChangeRoutes;
import thudbook.pages.history.HistoryRoutes;
import thudbook.pages.history.PlainRoutes;
import thudbook.pages.rack.EquipmentRoutes;
import thudbook.pages.reading.CompareRoutes;
import thudbook.pages.reading.ReadingRoutes;
import thudbook.pages.sessions.RecallRoutes;
import thudbook.pages.sessions.SessionRoutes;
import thudbook.pages.sharing.ShareRoutes;
import thudbook.pages.writing.DraftRoutes;
import thudbook.pages.writing.Editing;
import thudbook.pages.writing.EditorRoutes;
import thudbook.pages.writing.GateEditing;
import thudbook.pages.writing.GateEditorRoutes;
import thudbook.pages.writing.PhotoRoutes;
import thudbook.quantities.Fault;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.web.ErrorKind;
import thudbook.web.ErrorPage;
import thudbook.wording.MovedNumbers;

/** The pages that people read: the routes of all rooms. */
public final class Pages implements ErrorPage {
  private final Layout layout;
  private final List<Consumer<JavalinConfig>> routes;

  /**
   * Pages over these stores.
   *
   * @param clock tells when a draft was kept, and when something was begun and finished
   * @param ids gives what is new, and drafts, their names
   * @param base where other devices reach the notebook; null: nowhere
   */
  public Pages(
      Stores stores,
      Acts acts,
      AssetAddresses assets,
      InstantSource clock,
      Supplier<UUID> ids,
      @Nullable URI base) {
    this.layout = new Layout(assets);
    DraftRoutes drafts = new DraftRoutes(stores.drafts(), stores.recipes(), stores.gates(), clock);
    ReadingRoutes reading = new ReadingRoutes(layout, stores);
    this.routes =
        List.of(
            // Before recipes and gates: the address of a new one looks like a name.
            editor(stores, acts, drafts, ids)::addTo,
            gateEditor(stores, acts, drafts, ids)::addTo,
            recipeHistory(stores, acts, reading)::addTo,
            gateHistory(acts, reading)::addTo,
            new ChangeRoutes(layout, stores, acts)::addTo,
            config -> PlainRoutes.all(layout, acts).forEach(noun -> noun.addTo(config)),
            new CompareRoutes(layout, stores)::addTo,
            new FindRoutes(layout, stores, acts)::addTo,
            new SelectionRoutes(stores, acts)::addTo,
            new TagRoutes(layout, stores, acts)::addTo,
            new ShelfRoutes(layout, stores, clock)::addTo,
            reading::addTo,
            new HelpRoutes(layout)::addTo,
            new ShareRoutes(layout, stores, acts, ids)::addTo,
            new EquipmentRoutes(layout, stores, acts, ids)::addTo,
            new SessionRoutes(layout, stores, acts, ids)::addTo,
            new RecallRoutes(layout, stores, acts, clock, ids, base)::addTo,
            new PhotoRoutes(stores, acts)::addTo);
  }

  private EditorRoutes editor(Stores stores, Acts acts, DraftRoutes drafts, Supplier<UUID> ids) {
    Editing editing =
        new Editing(
            stores.recipes(),
            stores.gates(),
            stores.modules(),
            stores.library(),
            acts.recipes(),
            stores.drafts(),
            ids);
    return new EditorRoutes(layout, stores.recipes(), editing, drafts);
  }

  private GateEditorRoutes gateEditor(
      Stores stores, Acts acts, DraftRoutes drafts, Supplier<UUID> ids) {
    GateEditing editing =
        new GateEditing(stores.gates(), stores.recipes(), acts.gates(), stores.drafts(), ids);
    return new GateEditorRoutes(layout, stores.gates(), editing, drafts);
  }

  private HistoryRoutes<Recipe> recipeHistory(Stores stores, Acts acts, ReadingRoutes reading) {
    return new HistoryRoutes<>(
        layout,
        Documents.RECIPE,
        acts.recipes(),
        new HistoryRoutes.Subject<>(
            "/recipes/",
            Frame.Section.RECIPES,
            Recipe::title,
            () -> {
              Listening listening = stores.listening();
              return (before, after) -> MovedNumbers.words(before, after, listening);
            },
            true,
            reading::earlierRecipe));
  }

  private HistoryRoutes<Gate> gateHistory(Acts acts, ReadingRoutes reading) {
    return new HistoryRoutes<>(
        layout,
        Documents.GATE,
        acts.gates(),
        new HistoryRoutes.Subject<>(
            "/gates/", Frame.Section.GATES, Gate::title, reading::earlierGate));
  }

  /** Adds the routes of all pages. */
  public void addTo(JavalinConfig config) {
    routes.forEach(room -> room.accept(config));
  }

  @Override
  public String html(ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    ErrorSheet sheet = ErrorSheet.of(kind, faults, requestId);
    return layout.fill("frame/error", kind.title(), Frame.Section.NONE, Map.of("sheet", sheet));
  }
}
