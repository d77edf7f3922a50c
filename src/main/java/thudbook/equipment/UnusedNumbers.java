package thudbook.equipment;

import org.jspecify.annotations.Nullable;
import thudbook.gates.Response;

/**
 * What is written down of a channel and not used by its response. It is kept, so that nothing is
 * lost when another response is tried.
 */
public sealed interface UnusedNumbers {
  /** What stands there where nothing was written. */
  static UnusedNumbers usual(Response.Kind kind) {
    return switch (kind) {
      case BOTH -> new None();
      case AMPLITUDE -> new OfFilter(2, 1, null, 1);
      case LOW_PASS -> new OfLevel(null, 1, 0);
    };
  }

  /** Everything is used. */
  record None() implements UnusedNumbers {}

  /**
   * Of the level, where only the cutoff moves; see {@link thudbook.gates.Level}.
   *
   * @param leakDb null: not written
   */
  record OfLevel(@Nullable Double leakDb, double exponent, double saturation)
      implements UnusedNumbers {}

  /**
   * Of the filter, where only the level moves; see {@link thudbook.gates.Filter}.
   *
   * @param cutoff null: not written
   */
  record OfFilter(int poles, double spread, @Nullable Cutoff cutoff, double exponent)
      implements UnusedNumbers {}

  /** The cutoff of the closed and of the open gate, in hertz. */
  record Cutoff(double closedHertz, double openHertz) {}
}
