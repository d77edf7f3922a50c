package thudbook.pages.frame;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Changes;
import thudbook.wording.ChangeWords;

/**
 * What was done a moment ago, with undo.
 *
 * @param change its number
 * @param words what was done, as a sentence
 * @param back where the reader is, and comes back to
 */
public record DoneNotice(long change, String words, String back) {
  /** The parameter of an address that tells what was done. */
  public static final String PARAMETER = "done";

  /**
   * What an address tells to have been done.
   *
   * @param done the parameter; null: nothing was done
   * @return empty if there is no such change, or it was undone
   */
  public static Optional<DoneNotice> of(@Nullable String done, Changes changes, String back) {
    if (done == null || !done.matches("[1-9][0-9]{0,17}")) {
      return Optional.empty();
    }
    return changes
        .find(Long.parseLong(done))
        .filter(change -> change.undoneBy() == null)
        .map(change -> new DoneNotice(change.id(), ChangeWords.heading(change.what()) + ".", back));
  }
}
