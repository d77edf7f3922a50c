package thudbook.wording;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;

/**
 * Numbers of recipes for a reader. Predicted ones are rounded as {@link ReadableNumbers} does;
 * those that a person entered are shown exactly.
 */
public final class Reading {
  /** Between a number and its unit, so that a line never breaks there. */
  private static final String SPACE = "\u00a0";

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private Reading() {}

  /** A predicted metric, or a dash where it does not exist. */
  public static String of(Metric metric, OptionalDouble value) {
    return value.isEmpty() ? ReadableNumbers.ABSENT : of(metric, value.getAsDouble());
  }

  /** A predicted number with the unit of a metric, or a dash for null. */
  public static String of(Metric metric, @Nullable Double value) {
    return value == null ? ReadableNumbers.ABSENT : of(metric, value.doubleValue());
  }

  /** A predicted metric in the unit that suits its size. */
  static String of(Metric metric, double value) {
    return switch (metric.unit()) {
      case "s" -> ReadableNumbers.seconds(value);
      case "V" -> ReadableNumbers.volts(value);
      case "dB" -> ReadableNumbers.decibels(value);
      case "Hz" -> ReadableNumbers.hertz(value);
      default -> ReadableNumbers.share(value);
    };
  }

  /** A number that a person entered, exact: shortest digits, no exponent. */
  public static String entered(double value) {
    return plain(BigDecimal.valueOf(value));
  }

  /** A number that a person entered, with its unit. */
  public static String entered(double value, String unit) {
    return entered(value) + SPACE + unit;
  }

  /** A time that a person entered: milliseconds, or seconds from one. */
  public static String enteredTime(double seconds) {
    BigDecimal exact = BigDecimal.valueOf(seconds);
    return Math.abs(seconds) < 1
        ? plain(exact.movePointRight(3)) + SPACE + "ms"
        : plain(exact) + SPACE + "s";
  }

  /** A frequency that a person entered: hertz, or kilohertz from one. */
  public static String enteredHertz(double hertz) {
    BigDecimal exact = BigDecimal.valueOf(hertz);
    return hertz < 1000
        ? plain(exact) + SPACE + "Hz"
        : plain(exact.movePointLeft(3)) + SPACE + "kHz";
  }

  /** A share that a person entered, in per cent. */
  public static String enteredShare(double share) {
    return plain(BigDecimal.valueOf(share).movePointRight(2)) + SPACE + "%";
  }

  /** A value with its unit, as it does not break and with a true minus. */
  public static String shown(String value) {
    return value.replace('-', '−').replace(' ', '\u00a0');
  }

  /** A date in words. */
  public static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** The day of a time of record, in UTC. */
  public static String day(Instant time) {
    return day(LocalDate.ofInstant(time, ZoneOffset.UTC));
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString().replace('-', '−');
  }
}
