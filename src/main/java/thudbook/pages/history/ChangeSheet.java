package thudbook.pages.history;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Change;
import thudbook.documents.Documents;
import thudbook.predictions.Metric;
import thudbook.predictions.Reach;
import thudbook.quantities.Fault;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.PredictionStore.Moved;
import thudbook.wording.ChangeWords;
import thudbook.wording.MetricWords;
import thudbook.wording.MovedNumbers;
import thudbook.wording.ReachWords;
import thudbook.wording.ReadableNumbers;
import thudbook.wording.Reading;
import thudbook.wording.TimeOfRecord;

/**
 * One act: what it did, undoing it, and what followed from it.
 *
 * @param title what was done, as a heading
 * @param undoneBy number of the change that undid it; null: it stands
 * @param obstacles what keeps it from being undone; empty: nothing does
 * @param tried whether somebody has just tried to undo it in vain
 * @param more how many more effects there are than are listed
 * @param progress of the recipes that have to be predicted again; null: none had to
 */
public record ChangeSheet(
    long id,
    TimeOfRecord at,
    String author,
    String title,
    @Nullable Long undoneBy,
    List<Obstacle> obstacles,
    boolean tried,
    List<Effect> effects,
    int more,
    @Nullable ProgressView progress,
    List<Row> moved,
    @Nullable String previous,
    @Nullable String next) {
  /** How many recipes stand on a page. */
  static final int ROWS = 50;

  /** What the table tells of each recipe. */
  public static final List<Metric> TOLD =
      List.of(Metric.HOLD, Metric.RELEASE_40, Metric.PEAK_DB, Metric.THUMP_PEAK);

  /**
   * Something in the way of an undo.
   *
   * @param recipe slug of the recipe that it is about; empty: none
   */
  public record Obstacle(String message, String recipe) {}

  /**
   * What was done to one thing.
   *
   * @param revision address of the revision that was made; null: none
   */
  public record Effect(String done, String title, String address, @Nullable String revision) {}

  /**
   * A recipe that followed from the change.
   *
   * @param cells what the told numbers were and are
   */
  public record Row(String title, String address, boolean waiting, List<Cell> cells, Cell reach) {}

  /**
   * What a number was and is.
   *
   * @param noticed whether it moved so far that it is worth a look
   */
  public record Cell(String before, String now, boolean noticed) {
    /** Whether a reader sees a difference. */
    public boolean differs() {
      return !before.equals(now);
    }
  }

  /** What a change did. */
  static ChangeSheet of(
      Change change, List<Fault> obstacles, boolean tried, PredictionStore predictions, int from) {
    ProgressView progress = predictions.progress(change.id()).map(ProgressView::of).orElse(null);
    List<Row> moved =
        progress == null
            ? List.of()
            : predictions.moved(change.id(), from, ROWS).stream().map(ChangeSheet::row).toList();
    String address = "/changes/" + change.id() + "?from=";
    return new ChangeSheet(
        change.id(),
        TimeOfRecord.of(change.at()),
        change.author().name(),
        ChangeWords.heading(change.what()),
        change.undoneBy(),
        obstacles.stream().map(ChangeSheet::obstacle).toList(),
        tried,
        change.effects().stream().map(ChangeSheet::effect).toList(),
        change.count() - change.effects().size(),
        progress,
        moved,
        from == 0 ? null : address + Math.max(0, from - ROWS),
        progress == null || from + ROWS >= progress.recipes() ? null : address + (from + ROWS));
  }

  /** Names of the told numbers. */
  public List<String> header() {
    List<String> header = new ArrayList<>();
    TOLD.forEach(metric -> header.add(MetricWords.of(metric).name()));
    header.add("Reach");
    return header;
  }

  private static Obstacle obstacle(Fault fault) {
    return new Obstacle(fault.message(), fault.code().equals("in-use") ? fault.found() : "");
  }

  private static Effect effect(Change.Effect effect) {
    String folder =
        effect.noun().equals(Documents.MODULE.word()) ? "equipment" : effect.noun() + "s";
    String address = "/" + folder + "/" + effect.slug();
    String done =
        switch (effect.kind()) {
          case ADDED -> "Added";
          case CHANGED -> "Changed";
          case BINNED -> "Into the bin";
          case TAKEN_BACK -> "Out of the bin";
        };
    return new Effect(
        done,
        effect.title(),
        address,
        effect.revision() == 0 || !hasHistoryPage(effect.noun())
            ? null
            : address + "/history/" + effect.revision());
  }

  private static boolean hasHistoryPage(String noun) {
    return !noun.equals(Documents.SESSION.word());
  }

  private static Row row(Moved moved) {
    List<Cell> cells = new ArrayList<>();
    for (Metric metric : TOLD) {
      Double before = moved.before().get(metric);
      Double now = moved.now().get(metric);
      cells.add(
          new Cell(
              Reading.of(metric, before),
              Reading.of(metric, now),
              before == null
                  ? now != null
                  : now == null || MovedNumbers.isNoticed(metric, before, now)));
    }
    String was = reach(moved.reachBefore());
    String is = reach(moved.reachNow());
    return new Row(
        moved.title(),
        "/recipes/" + moved.slug(),
        moved.waiting(),
        cells,
        new Cell(was, is, !was.equals(is)));
  }

  private static String reach(@Nullable Reach reach) {
    return reach == null ? ReadableNumbers.ABSENT : ReachWords.brief(reach);
  }
}
