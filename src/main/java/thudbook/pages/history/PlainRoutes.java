package thudbook.pages.history;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.notebook.Acts;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.pages.frame.RevisionBanner;
import thudbook.web.Visitors;

/**
 * Pages of things of a noun that has none of its own: all of them, each as its text, what it was,
 * and the way into the bin.
 *
 * @param <T> what kind of things
 */
public final class PlainRoutes<T extends Thing> {
  private final Layout layout;
  private final Keeper<T> acts;
  private final String folder;
  private final HistoryRoutes<T> history;

  private PlainRoutes(Layout layout, NounDocument<T> noun, Keeper<T> acts) {
    this.layout = layout;
    this.acts = acts;
    this.folder = noun.word() + "s";
    this.history =
        new HistoryRoutes<>(
            layout,
            noun,
            acts,
            new HistoryRoutes.Subject<>(
                "/" + folder + "/", Frame.Section.NONE, Thing::title, this::earlier));
  }

  /** Those of every noun that only this notebook has. */
  public static List<PlainRoutes<?>> all(Layout layout, Acts acts) {
    List<PlainRoutes<?>> all = new ArrayList<>();
    for (NounDocument<?> noun : acts.nouns()) {
      if (!Documents.NOUNS.contains(noun)) {
        all.add(of(layout, noun, acts));
      }
    }
    return List.copyOf(all);
  }

  private static <T extends Thing> PlainRoutes<T> of(
      Layout layout, NounDocument<T> noun, Acts acts) {
    return new PlainRoutes<>(layout, noun, acts.changes().keeper(noun));
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/" + folder, this::list)
        .get("/" + folder + "/{slug}", this::thing)
        .post("/" + folder + "/{slug}/bin", this::bin);
    history.addTo(config);
  }

  private void list(Context context) {
    List<PlainSheet> sheets =
        acts.store().all().stream().map(kept -> PlainSheet.of(kept, folder)).toList();
    String heading = BinSheet.heading(folder);
    layout.show(
        context,
        "history/plain-list",
        heading,
        Frame.Section.NONE,
        Map.of("heading", heading, "sheets", sheets));
  }

  private void thing(Context context) {
    Kept<T> kept = found(context);
    if (context.pathParam("slug").equals(kept.slug())) {
      show(context, kept.title(), Map.of("sheet", PlainSheet.of(kept, folder)));
    } else {
      context.redirect("/" + folder + "/" + kept.slug(), HttpStatus.PERMANENT_REDIRECT);
    }
  }

  private void earlier(Context context, Kept<T> then, RevisionBanner banner) {
    show(
        context,
        then.title() + ", revision " + then.revision(),
        Map.of("sheet", PlainSheet.of(then, folder), "banner", banner));
  }

  private void bin(Context context) {
    long change =
        acts.bin(found(context).id(), Requested.version(context), Visitors.of(context).author());
    context.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private void show(Context context, String title, Map<String, ?> values) {
    layout.show(context, "history/plain", title, Frame.Section.NONE, values);
  }

  private Kept<T> found(Context context) {
    return Requested.thing(context, acts.noun().word(), acts.store());
  }
}
