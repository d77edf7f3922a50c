package thudbook.pages.history;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Thing;
import thudbook.documents.NounDocument;
import thudbook.wording.TimeOfRecord;

/**
 * Everything that a recipe, a gate or a module was, newest first, a page of it.
 *
 * @param address of its page
 * @param version what an act on it has to name
 * @param standing whether it can be changed: it is not in the bin
 * @param older address of the page of earlier revisions; null: this is the last
 * @param newest address of the first page; null: this is it
 * @param notice what a reader should know first; empty: nothing
 */
public record HistorySheet(
    String title,
    String address,
    long version,
    boolean standing,
    List<Line> lines,
    @Nullable String older,
    @Nullable String newest,
    String notice) {
  /** How many revisions stand on a page. */
  public static final int ROWS = 20;

  /**
   * One saved state.
   *
   * @param what the act that made it, in words
   * @param differences from the one before, in words; empty for the first one
   * @param moved numbers that moved with them, all predicted with today's gates
   * @param comparison address of the comparison with today; empty: there is none
   * @param current whether it is what counts today
   */
  public record Line(
      int number,
      TimeOfRecord at,
      String author,
      String what,
      long change,
      List<String> differences,
      List<String> moved,
      String comparison,
      boolean current) {}

  /** What a thing was. */
  static <T extends Thing> HistorySheet of(
      Kept<T> kept,
      List<Revision<T>> revisions,
      NounDocument<T> noun,
      HistoryRoutes.Subject<T> pages,
      int below,
      String notice) {
    BiFunction<T, T, List<String>> moved = pages.moved().get();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < Math.min(ROWS, revisions.size()); i++) {
      Revision<T> revision = revisions.get(i);
      T before = i + 1 < revisions.size() ? revisions.get(i + 1).thing() : null;
      List<String> followed = before == null ? List.of() : moved.apply(before, revision.thing());
      lines.add(line(kept, revision, before, noun, followed, pages));
    }
    String address = pages.address(kept);
    return new HistorySheet(
        pages.title().apply(kept.thing()),
        address,
        kept.version(),
        !kept.isBinned(),
        lines,
        older(address, revisions),
        below == 0 ? null : address + "/history",
        notice);
  }

  private static <T extends Thing> Line line(
      Kept<T> kept,
      Revision<T> revision,
      @Nullable T before,
      NounDocument<T> noun,
      List<String> moved,
      HistoryRoutes.Subject<T> pages) {
    boolean isCurrent = revision.number() == kept.revision();
    List<String> told = before == null ? List.of() : noun.differences(before, revision.thing());
    return new Line(
        revision.number(),
        TimeOfRecord.of(revision.at()),
        revision.author().name(),
        what(revision.what(), told),
        revision.change(),
        told,
        moved,
        isCurrent ? "" : pages.comparison(kept, revision.number()),
        isCurrent);
  }

  /** The words of an act, unless they only say what the differences say. */
  private static String what(String what, List<String> differences) {
    String same = String.join("; ", differences).replace('\u00a0', ' ');
    return what.replace('\u00a0', ' ').equalsIgnoreCase(same) ? "saved" : what;
  }

  private static <T> @Nullable String older(String address, List<Revision<T>> revisions) {
    return revisions.size() <= ROWS
        ? null
        : address + "/history?below=" + revisions.get(ROWS - 1).number();
  }
}
