package thudbook.changes;

import java.util.Comparator;

/**
 * What a kind of things is called, and how they become text and come back from it.
 *
 * @param <T> the things
 */
public interface Noun<T extends Thing> {
  /**
   * What one is called, such as {@code recipe}: 1 to 40 of a to z and hyphens. With an s it is a
   * folder and a part of addresses.
   */
  String word();

  /**
   * What a canonical text says.
   *
   * @throws thudbook.quantities.Refusal if it can't be read
   * @throws IllegalStateException if it is of another noun
   */
  T read(String document);

  /** The canonical text of a thing: two things are the same if and only if theirs are equal. */
  String write(T thing);

  /** The same thing with another slug. */
  T withSlug(T thing, String slug);

  /**
   * Whether all that is derived from one state of a thing is that of another, so that it need not
   * be made anew.
   */
  default boolean followsAlike(T before, T after) {
    return false;
  }

  /** How things of equal titles, or all of them, are listed; otherwise they are by title. */
  default Comparator<T> order() {
    return (unused, unusedOther) -> 0;
  }
}
