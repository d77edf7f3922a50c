package thudbook.library.typed;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;
import thudbook.library.Days;

/** Days as they are typed: {@code 2026-10-02}, a month {@code 2026-10} or a year {@code 2026}. */
final class TypedDate {
  private TypedDate() {}

  /** The days of a text; null: it is none. */
  static @Nullable Days read(String text) {
    try {
      if (text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
        LocalDate day = LocalDate.parse(text);
        return new Days(day, day);
      }
      if (text.matches("[0-9]{4}-[0-9]{2}")) {
        YearMonth month = YearMonth.parse(text);
        return new Days(month.atDay(1), month.atEndOfMonth());
      }
      if (text.matches("[0-9]{4}")) {
        Year year = Year.parse(text);
        return new Days(year.atDay(1), year.atMonth(12).atEndOfMonth());
      }
    } catch (DateTimeException e) {
      // There is no such day.
    }
    return null;
  }

  /**
   * The days that a word makes of some days.
   *
   * @return null: the word is none of "since", "after", "before", "until", "on" and "in"
   */
  static @Nullable Days span(String how, Days days) {
    return switch (how) {
      case "since" -> new Days(days.from(), null);
      case "after" -> new Days(plus(days.to(), 1), null);
      case "before" -> new Days(null, plus(days.from(), -1));
      case "until" -> new Days(null, days.to());
      case "on", "in" -> days;
      default -> null;
    };
  }

  private static @Nullable LocalDate plus(@Nullable LocalDate day, long days) {
    return day == null ? null : day.plusDays(days);
  }
}
