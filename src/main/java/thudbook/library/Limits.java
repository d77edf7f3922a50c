package thudbook.library;

import org.jspecify.annotations.Nullable;

/**
 * Where a number must lie.
 *
 * @param from null: no lower limit
 * @param fromItself whether the lower limit itself is in
 * @param to null: no upper limit
 * @param toItself whether the upper limit itself is in
 */
public record Limits(
    @Nullable Double from, boolean fromItself, @Nullable Double to, boolean toItself) {
  public Limits {
    if (from == null && to == null) {
      throw new IllegalArgumentException("a limit at least was expected");
    }
    if ((from != null && !Double.isFinite(from)) || (to != null && !Double.isFinite(to))) {
      throw new IllegalArgumentException("limits are finite, were " + from + " and " + to);
    }
  }

  /** From one number to another, both in; null: no limit on that side. */
  public static Limits between(@Nullable Double from, @Nullable Double to) {
    return new Limits(from, true, to, true);
  }

  /** Whether a number lies there; NaN, which stands for none, never does. */
  public boolean admit(double value) {
    return (from == null ? !Double.isNaN(value) : fromItself ? value >= from : value > from)
        && (to == null || (toItself ? value <= to : value < to));
  }

  /** What both admit. */
  public Limits and(Limits other) {
    Limits lower = higherLower(this, other);
    Limits upper = lowerUpper(this, other);
    return new Limits(lower.from, lower.fromItself, upper.to, upper.toItself);
  }

  private static Limits higherLower(Limits one, Limits other) {
    if (one.from == null || other.from == null) {
      return one.from == null ? other : one;
    }
    int order = Double.compare(one.from, other.from);
    return order > 0 || (order == 0 && !one.fromItself) ? one : other;
  }

  private static Limits lowerUpper(Limits one, Limits other) {
    if (one.to == null || other.to == null) {
      return one.to == null ? other : one;
    }
    int order = Double.compare(one.to, other.to);
    return order < 0 || (order == 0 && !one.toItself) ? one : other;
  }
}
