package thudbook.pages.history;

import java.util.List;
import thudbook.changes.Change;
import thudbook.wording.ChangeWords;
import thudbook.wording.TimeOfRecord;

/** The latest acts, newest first. */
public record ChangeList(List<Line> lines) {
  /**
   * One act.
   *
   * @param touched how many things it touched, in words
   */
  public record Line(
      long id, TimeOfRecord at, String author, String what, String touched, boolean undone) {}

  static ChangeList of(List<Change> changes) {
    return new ChangeList(
        changes.stream()
            .map(
                change ->
                    new Line(
                        change.id(),
                        TimeOfRecord.of(change.at()),
                        change.author().name(),
                        ChangeWords.heading(change.what()),
                        touched(change),
                        change.undoneBy() != null))
            .toList());
  }

  private static String touched(Change change) {
    return switch (change.count()) {
      case 0 -> "";
      case 1 -> change.effects().get(0).title();
      default -> change.count() + " things";
    };
  }
}
