package thudbook.patching;

import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Dimension;
import thudbook.recipes.Recipe;

/**
 * A number of one part of a sound, and the part with another number there.
 *
 * @param si null: not yet
 */
record Part<T>(Dimension dimension, @Nullable Double si, DoubleFunction<T> replacing) {
  static <T> Optional<Part<T>> some(
      Dimension dimension, @Nullable Double si, DoubleFunction<T> replacing) {
    return Optional.of(new Part<>(dimension, si, replacing));
  }

  /** The number as one of a recipe. */
  SoundValue in(Function<T, Recipe> whole) {
    return new SoundValue(dimension, si, other -> whole.apply(replacing.apply(other)));
  }
}
