package thudbook.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Numbers as people read them, with their units: three significant digits at most, a true minus
 * sign, no trailing zeros. Absent and infinite values are a dash.
 */
public final class ReadableNumbers {
  /** What stands for a number that does not exist. */
  public static final String ABSENT = "–";

  private ReadableNumbers() {}

  /** A time: {@code 0.34 ms}, {@code 118 ms}, {@code 1.61 s}. */
  public static String seconds(double seconds) {
    return Math.abs(seconds) < 0.9995
        ? with(significant(seconds * 1000), "ms")
        : with(significant(seconds), "s");
  }

  /** A level to a tenth of a decibel: {@code −7.0 dB}. */
  public static String decibels(double decibels) {
    return with(fixed(decibels, 1), "dB");
  }

  /** A voltage: {@code 2.4 V}, {@code −0.05 V}, {@code 40 mV} below a tenth of a volt. */
  public static String volts(double volts) {
    double size = Math.abs(volts);
    return size < 0.0995 && size >= 0.00005
        ? with(significant(volts * 1000), "mV")
        : with(size < 0.00005 ? "0" : significant(volts), "V");
  }

  /** A frequency: {@code 40 Hz}, {@code 9 kHz}. */
  public static String hertz(double hertz) {
    return Math.abs(hertz) < 999.5
        ? with(significant(hertz), "Hz")
        : with(significant(hertz / 1000), "kHz");
  }

  /** A share of one in percent: {@code 76.8 %}. */
  public static String share(double share) {
    return with(significant(share * 100), "%");
  }

  /** A plain number, three significant digits at most, without trailing zeros. */
  public static String significant(double value) {
    if (!Double.isFinite(value)) {
      return ABSENT;
    }
    double size = Math.abs(value);
    int places =
        size == 0 ? 0 : Math.max(0, Math.min(4, 2 - (int) Math.floor(Math.log10(size) + 1e-9)));
    return trimmed(fixed(value, places));
  }

  private static String fixed(double value, int places) {
    if (!Double.isFinite(value)) {
      return ABSENT;
    }
    String digits =
        BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    return digits.startsWith("-") ? "−" + digits.substring(1) : digits;
  }

  private static String trimmed(String digits) {
    int end = digits.length();
    if (digits.contains(".")) {
      while (digits.charAt(end - 1) == '0') {
        end--;
      }
      if (digits.charAt(end - 1) == '.') {
        end--;
      }
    }
    return digits.substring(0, end);
  }

  /** No-break space, so that a number and its unit stay on one line. */
  private static String with(String number, String unit) {
    return number.equals(ABSENT) ? ABSENT : number + "\u00a0" + unit;
  }
}
