package thudbook.library;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A span of days, both ends in it.
 *
 * @param from null: no beginning
 * @param to null: no end
 */
public record Days(@Nullable LocalDate from, @Nullable LocalDate to) {
  /** Every day, and none. */
  public static final Days ANY = new Days(null, null);

  /** Whether nothing is asked. */
  public boolean isAny() {
    return from == null && to == null;
  }

  /** Whether a day lies in the span. */
  public boolean admit(LocalDate day) {
    return (from == null || !day.isBefore(from)) && (to == null || !day.isAfter(to));
  }

  /** The days in both. */
  public Days and(Days other) {
    return new Days(
        from == null || (other.from != null && other.from.isAfter(from)) ? other.from : from,
        to == null || (other.to != null && other.to.isBefore(to)) ? other.to : to);
  }
}
