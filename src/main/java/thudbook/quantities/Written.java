package thudbook.quantities;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A number with its unit as a person wrote it, before anyone asks whether it fits: {@code 180ms},
 * {@code 1.2 kHz}, {@code -66 dB}, {@code .5}.
 *
 * @param number the digits as written, with a decimal point
 * @param unit null: none of ours
 * @param unitText the unit as written; empty: none
 */
record Written(BigDecimal number, @Nullable Unit unit, String unitText) {
  /** No number of ours needs more; a longer one is refused before it costs time. */
  private static final int LONGEST = 64;

  private static final String DIGITS = "[+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)";
  private static final Pattern FORM =
      Pattern.compile("(" + DIGITS + "(?:[eE][+-]?[0-9]{1,4})?) *([^0-9 .,+-][^0-9]*)?");
  private static final Pattern COMMA =
      Pattern.compile("([+-]?[0-9]+),([0-9]+) *([^0-9 .,+-][^0-9]*)?");

  /** Reads a number with or without a unit; empty where the text is neither. */
  static Optional<Written> read(String text) {
    String plain = plain(text);
    Matcher matcher = FORM.matcher(plain);
    if (plain.length() > LONGEST || !matcher.matches()) {
      return Optional.empty();
    }
    String unitText = matcher.group(2) == null ? "" : matcher.group(2).strip();
    return Optional.of(
        new Written(new BigDecimal(matcher.group(1)), Unit.named(unitText), unitText));
  }

  /**
   * How a number with a decimal comma should be written, such as {@code 1.2 ms} for {@code 1,2 ms};
   * empty where the text is no such number.
   */
  static Optional<String> withoutComma(String text) {
    String plain = plain(text);
    Matcher matcher = COMMA.matcher(plain);
    if (plain.length() > LONGEST || !matcher.matches()) {
      return Optional.empty();
    }
    String unit = matcher.group(3) == null ? "" : matcher.group(3).strip();
    if (!unit.isEmpty() && Unit.named(unit) == null) {
      return Optional.empty();
    }
    String tail = unit.isEmpty() ? "" : " " + unit;
    String point = matcher.group(1) + "." + matcher.group(2) + tail;
    // Three digits behind the comma may be meant as thousands.
    return Optional.of(
        matcher.group(2).length() == 3
            ? point + " or " + matcher.group(1) + matcher.group(2) + tail
            : point);
  }

  /** The value in SI units: the decimal point moves, so that 2.1 ms is exactly 0.0021 s. */
  double si() {
    return number.scaleByPowerOfTen(unit == null ? 0 : unit.places()).doubleValue();
  }

  private static String plain(String text) {
    return text.replace('\u2212', '-')
        .replace('\u00a0', ' ')
        .replace('\u2009', ' ')
        .replace('\u202f', ' ')
        .strip();
  }

  /** The units that people write. */
  enum Unit {
    SECONDS("s", Dimension.TIME, 0),
    MILLISECONDS("ms", Dimension.TIME, -3),
    MICROSECONDS("µs", Dimension.TIME, -6),
    HERTZ("hz", Dimension.FREQUENCY, 0),
    KILOHERTZ("khz", Dimension.FREQUENCY, 3),
    VOLTS("v", Dimension.VOLTAGE, 0),
    MILLIVOLTS("mv", Dimension.VOLTAGE, -3),
    DECIBELS("db", Dimension.LEVEL, 0),
    PER_CENT("%", Dimension.SHARE, -2),
    TIMES("x", Dimension.RATIO, 0),
    BEATS_PER_MINUTE("bpm", Dimension.TEMPO, 0),
    MINUTES("min", Dimension.MINUTES, 0),
    DEGREES("deg", Dimension.ANGLE, 0),
    NONE("", Dimension.NUMBER, 0);

    private final String word;
    private final Dimension dimension;
    private final int places;

    Unit(String word, Dimension dimension, int places) {
      this.word = word;
      this.dimension = dimension;
      this.places = places;
    }

    Dimension dimension() {
      return dimension;
    }

    /** How far the decimal point moves to the right to reach the SI unit. */
    int places() {
      return places;
    }

    static @Nullable Unit named(String text) {
      String word =
          text.toLowerCase(Locale.ROOT)
              .replace('\u03bc', 'µ')
              .replace('×', 'x')
              .replace("us", "µs")
              .replace("degrees", "deg")
              .replace("°", "deg");
      for (Unit unit : values()) {
        if (unit.word.equals(word)) {
          return unit;
        }
      }
      return null;
    }
  }
}
