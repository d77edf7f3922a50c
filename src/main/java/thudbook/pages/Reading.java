package thudbook.pages;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import thudbook.predictions.Metric;

/**
 * Numbers as a reader wants them: with their unit, a true minus sign and as many digits as mean
 * something. Predicted numbers are rounded; numbers that a person entered are shown as they are.
 */
public final class Reading {
  /** What stands where a number does not exist. */
  public static final String ABSENT = "–";

  /** Between a number and its unit, so that a line never breaks there. */
  private static final String SPACE = "\u00a0";

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private Reading() {}

  /** A predicted metric, or a dash where it does not exist. */
  static String of(Metric metric, OptionalDouble value) {
    return value.isEmpty() ? ABSENT : of(metric, value.getAsDouble());
  }

  /** A predicted metric in the unit that suits its size. */
  static String of(Metric metric, double value) {
    return switch (metric.unit()) {
      case "s" -> time(value);
      case "V" -> volts(value);
      case "dB" -> decibels(value);
      case "Hz" -> hertz(value);
      default -> share(value);
    };
  }

  /** A predicted time: three digits, in milliseconds below a second. */
  static String time(double seconds) {
    double size = Math.abs(seconds);
    if (size < 0.5e-6) {
      return "0" + SPACE + "ms";
    }
    return size < 0.9995
        ? digits(seconds * 1e3, 3) + SPACE + "ms"
        : digits(seconds, 3) + SPACE + "s";
  }

  /** A level in decibels: one decimal. */
  static String decibels(double db) {
    if (Double.isInfinite(db)) {
      return db > 0 ? "∞" + SPACE + "dB" : "−∞" + SPACE + "dB";
    }
    return fixed(db, 1) + SPACE + "dB";
  }

  /** A predicted voltage: two decimals, in millivolts below ten of them. */
  static String volts(double volts) {
    if (volts != 0 && Math.abs(volts) < 0.00995) {
      return digits(volts * 1e3, 2) + SPACE + "mV";
    }
    return fixed(volts, 2) + SPACE + "V";
  }

  /** A frequency: three digits, in kilohertz from one. */
  static String hertz(double hertz) {
    if (Double.isInfinite(hertz)) {
      return "no filter";
    }
    return hertz < 999.5 ? digits(hertz, 3) + SPACE + "Hz" : digits(hertz / 1e3, 3) + SPACE + "kHz";
  }

  /** A share from 0 to 1 in per cent, whole from ten per cent. */
  static String share(double share) {
    double percent = share * 100;
    String number =
        percent >= 9.95 || percent == 0 ? fixed(percent, 0) : digits(Math.max(percent, 0), 2);
    return number + SPACE + "%";
  }

  /** A number that a person entered, exact: shortest digits, no exponent. */
  static String entered(double value) {
    return plain(BigDecimal.valueOf(value));
  }

  /** A number that a person entered, with its unit. */
  static String entered(double value, String unit) {
    return entered(value) + SPACE + unit;
  }

  /** A time that a person entered: milliseconds, or seconds from one. */
  static String enteredTime(double seconds) {
    BigDecimal exact = BigDecimal.valueOf(seconds);
    return Math.abs(seconds) < 1
        ? plain(exact.movePointRight(3)) + SPACE + "ms"
        : plain(exact) + SPACE + "s";
  }

  /** A frequency that a person entered: hertz, or kilohertz from one. */
  static String enteredHertz(double hertz) {
    BigDecimal exact = BigDecimal.valueOf(hertz);
    return hertz < 1000
        ? plain(exact) + SPACE + "Hz"
        : plain(exact.movePointLeft(3)) + SPACE + "kHz";
  }

  /** A share that a person entered, in per cent. */
  static String enteredShare(double share) {
    return plain(BigDecimal.valueOf(share).movePointRight(2)) + SPACE + "%";
  }

  /** A date in words. */
  static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** The day of a time of record, in UTC. */
  static String day(Instant time) {
    return day(LocalDate.ofInstant(time, ZoneOffset.UTC));
  }

  private static String digits(double value, int digits) {
    BigDecimal rounded =
        new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    int places = digits - (rounded.precision() - rounded.scale());
    // Whole numbers of more digits than asked for lose nothing before the point.
    return plainKeeping(rounded.setScale(Math.max(0, places), RoundingMode.HALF_EVEN));
  }

  private static String fixed(double value, int places) {
    return plainKeeping(new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN));
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : plainKeeping(value.stripTrailingZeros());
  }

  private static String plainKeeping(BigDecimal value) {
    return value.toPlainString().replace('-', '−');
  }
}
