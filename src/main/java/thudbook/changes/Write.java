package thudbook.changes;

import org.jspecify.annotations.Nullable;

/**
 * A thing to be added or changed.
 *
 * @param document its canonical text
 * @param version the version that is changed; null: it is new
 * @param derived what is kept beside it; null: nothing, or not known yet
 * @param <T> what kind of thing
 */
public record Write<T extends Thing>(
    Noun<T> noun, T thing, String document, @Nullable Long version, @Nullable Derived derived) {
  public Write {
    if (derived == Derived.AS_BEFORE && version == null) {
      throw new IllegalArgumentException("nothing is kept beside a new thing");
    }
  }

  /** A thing that is new. */
  public static <T extends Thing> Write<T> added(Noun<T> noun, T thing) {
    return changed(noun, thing, null);
  }

  /**
   * A thing as it will be.
   *
   * @param version the version that is changed; null: it is new
   */
  public static <T extends Thing> Write<T> changed(Noun<T> noun, T thing, @Nullable Long version) {
    return new Write<>(noun, thing, noun.write(thing), version, null);
  }

  /** The same with what is kept beside it. */
  public Write<T> with(@Nullable Derived other) {
    return new Write<>(noun, thing, document, version, other);
  }
}
