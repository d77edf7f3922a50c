package thudbook.changes;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;

/**
 * One act as it is remembered.
 *
 * @param what the act in words
 * @param undoneBy the change that undid it; null: it stands
 * @param effects what it did, the first {@value #MOST_EFFECTS} of them
 * @param count how many things it touched
 */
public record Change(
    long id,
    Instant at,
    Author author,
    String what,
    @Nullable Long undoneBy,
    List<Effect> effects,
    int count) {
  /** A change lists so many of its effects. */
  public static final int MOST_EFFECTS = 200;

  public Change {
    effects = List.copyOf(effects);
  }

  /** What was done to one thing. */
  public enum Kind {
    ADDED,
    CHANGED,
    BINNED,
    TAKEN_BACK
  }

  /**
   * What a change did to one thing.
   *
   * @param noun what it is, such as {@code recipe}
   * @param slug its name of today
   * @param title its title of today
   * @param revision the revision that was made; 0: none
   */
  public record Effect(String noun, String slug, String title, Kind kind, int revision) {}
}
