package thudbook.pages.history;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Thing;
import thudbook.documents.NounDocument;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.pages.frame.RevisionBanner;
import thudbook.quantities.Refusal;
import thudbook.web.Visitors;

/**
 * What things of a noun were, and going back to it.
 *
 * @param <T> what kind of things
 */
public final class HistoryRoutes<T extends Thing> {
  private static final String SAVED_SINCE =
      "Somebody saved it while you were looking. Look again before you go back.";

  private final Layout layout;
  private final NounDocument<T> noun;
  private final Keeper<T> acts;
  private final Subject<T> pages;

  public HistoryRoutes(Layout layout, NounDocument<T> noun, Keeper<T> acts, Subject<T> pages) {
    this.layout = layout;
    this.noun = noun;
    this.acts = acts;
    this.pages = pages;
  }

  /**
   * A noun as its history shows it.
   *
   * @param folder of their addresses, with slashes: {@code /gates/}
   * @param title what a thing is called in headings
   * @param moved tells what followed from a difference, in words; each answer asks for its own
   * @param compared whether there is a page on which two of them are compared
   * @param earlier shows a thing as it was
   */
  public record Subject<T extends Thing>(
      String folder,
      Frame.Section section,
      Function<T, String> title,
      Supplier<BiFunction<T, T, List<String>>> moved,
      boolean compared,
      Earlier<T> earlier) {
    /** Pages of things from which nothing follows. */
    public Subject(
        String folder, Frame.Section section, Function<T, String> title, Earlier<T> earlier) {
      this(folder, section, title, () -> (before, after) -> List.of(), false, earlier);
    }

    String address(Kept<T> kept) {
      return folder + kept.slug();
    }

    /** The address of the comparison of a revision with today; empty: there is none. */
    String comparison(Kept<T> kept, int number) {
      return compared ? "/compare?of=" + kept.slug() + "@" + number + "," + kept.slug() : "";
    }
  }

  /** Shows things as they were. */
  public interface Earlier<T extends Thing> {
    void show(Context context, Kept<T> then, RevisionBanner banner);
  }

  public void addTo(JavalinConfig config) {
    String address = pages.folder() + "{slug}/history";
    config
        .routes
        .get(address, context -> show(context, found(context), ""))
        .get(address + "/{number}", this::revision)
        .post(address + "/{number}/restore", this::restore);
  }

  private void show(Context context, Kept<T> kept, String notice) {
    int below = Requested.number(context, "below");
    List<Revision<T>> revisions = acts.store().revisions(kept.id(), below, HistorySheet.ROWS + 1);
    HistorySheet sheet = HistorySheet.of(kept, revisions, noun, pages, below, notice);
    layout.show(
        context,
        "history/history",
        "History of " + sheet.title(),
        pages.section(),
        Map.of("sheet", sheet));
  }

  private void revision(Context context) {
    Kept<T> kept = found(context);
    Revision<T> revision =
        acts.store()
            .revision(kept.id(), Requested.number(context))
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND,
                        "no-such-revision",
                        "There is no revision of this number."));
    RevisionBanner banner =
        RevisionBanner.of(
            revision,
            kept.revision(),
            pages.address(kept),
            pages.comparison(kept, revision.number()),
            kept.isBinned() ? 0 : kept.version());
    pages.earlier().show(context, kept.as(revision), banner);
  }

  private void restore(Context context) {
    try {
      long change =
          acts.restore(
              found(context).id(),
              Requested.version(context),
              Requested.number(context),
              Visitors.of(context).author());
      context.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      if (refusal.kind() != Refusal.Kind.STALE) {
        throw refusal;
      }
      context.status(HttpStatus.PRECONDITION_FAILED);
      show(context, found(context), SAVED_SINCE);
    }
  }

  private Kept<T> found(Context context) {
    return Requested.thing(context, noun.word(), acts.store());
  }
}
