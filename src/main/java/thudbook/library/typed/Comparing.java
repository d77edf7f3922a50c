package thudbook.library.typed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.library.Limits;
import thudbook.library.Quantity;

/** The words that compare a number, such as "at least". */
enum Comparing {
  OVER("over", "above", "more than", "longer than", "higher than", "louder than"),
  AT_LEAST("at least"),
  UNDER("under", "below", "less than", "shorter than", "lower than", "quieter than"),
  AT_MOST("at most", "up to"),
  BETWEEN("between"),
  ABOUT("about", "around");

  /** By the words of each. */
  static final Map<String, Comparing> NAMES = names();

  // Unmodifiable.
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> words;

  Comparing(String... words) {
    this.words = List.of(words);
  }

  private static Map<String, Comparing> names() {
    Map<String, Comparing> names = new HashMap<>();
    for (Comparing comparing : values()) {
      comparing.words.forEach(word -> names.put(word, comparing));
    }
    return Map.copyOf(names);
  }

  /** The usual word. */
  String word() {
    return words.get(0);
  }

  /** The limits of a comparison. */
  Limits limits(Quantity quantity, double value, @Nullable Double other) {
    return switch (this) {
      case OVER -> new Limits(value, false, null, false);
      case AT_LEAST -> new Limits(value, true, null, false);
      case UNDER -> new Limits(null, false, value, false);
      case AT_MOST -> new Limits(null, false, value, true);
      case BETWEEN -> {
        double end = other == null ? value : other;
        yield Limits.between(Math.min(value, end), Math.max(value, end));
      }
      case ABOUT -> {
        double width = width(quantity, value);
        yield Limits.between(value - width, value + width);
      }
    };
  }

  /** A tenth; of levels 1 dB, of shares 5 %. */
  private static double width(Quantity quantity, double value) {
    return switch (quantity.dimension()) {
      case LEVEL -> 1;
      case SHARE -> 0.05;
      default -> Math.abs(value) / 10;
    };
  }
}
