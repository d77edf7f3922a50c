package thudbook.pages.finding;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.library.Library;
import thudbook.library.ShelfStore;
import thudbook.library.ShelfStore.Shelf;
import thudbook.library.typed.SearchAddress;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.ListAddress;
import thudbook.pages.frame.Requested;
import thudbook.quantities.Refusal;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/** Shelves: searches with a name, which fill themselves. */
public final class ShelfRoutes {
  private final Layout layout;
  private final ShelfStore shelves;
  private final Library library;
  private final Things<Gate> gates;
  private final InstantSource clock;

  public ShelfRoutes(Layout layout, Stores stores, InstantSource clock) {
    this.layout = layout;
    this.shelves = stores.shelves();
    this.library = stores.library();
    this.gates = stores.gates();
    this.clock = clock;
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/shelves", context -> show(context, null))
        .post("/shelves", this::add)
        .post("/shelves/{id}/name", this::rename)
        .post("/shelves/{id}/remove", this::remove);
  }

  private void show(Context context, ShelfSheet.@Nullable Waiting waiting) {
    layout.show(
        context,
        "finding/shelves",
        "Shelves",
        Frame.Section.RECIPES,
        Map.of(
            "sheet",
            ShelfSheet.of(shelves.all(), waiting, library, gates, Visitors.of(context).author())));
  }

  private void add(Context context) {
    String name = text(context, "name");
    String search = text(context, "search");
    try {
      Shelf shelf = shelves.add(name, search, Visitors.of(context).author(), clock.instant());
      context.redirect(address(shelf), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      refuse(context, refusal, name, search);
    }
  }

  private void rename(Context context) {
    Shelf shelf = found(context);
    String name = text(context, "name");
    try {
      shelves.change(shelf.id(), name, shelf.search());
      context.redirect("/shelves", HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      refuse(context, refusal, shelf.name(), "");
    }
  }

  private void refuse(Context context, Refusal refusal, String name, String search) {
    context.status(ErrorKind.of(refusal.kind()).status());
    show(context, new ShelfSheet.Waiting(name, search, refusal.faults().get(0).message()));
  }

  /** It holds nothing of its own; the answer offers to put it up again. */
  private void remove(Context context) {
    Shelf shelf = found(context);
    shelves.remove(shelf.id());
    show(context, new ShelfSheet.Waiting(shelf.name(), shelf.search(), ""));
  }

  private Shelf found(Context context) {
    String id = context.pathParam("id");
    return (id.matches("[1-9][0-9]{0,17}")
            ? shelves.find(Long.parseLong(id))
            : Optional.<Shelf>empty())
        .orElseThrow(() -> Requested.notFound("There is no such shelf."));
  }

  private static String address(Shelf shelf) {
    return ListAddress.of(SearchAddress.ofQuery(shelf.search()).address(), "");
  }

  private static String text(Context context, String name) {
    return Objects.requireNonNullElse(context.formParam(name), "").strip();
  }
}
