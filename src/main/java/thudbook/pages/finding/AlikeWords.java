package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.library.Quantity;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.wording.MetricWords;
import thudbook.wording.MovedNumbers;
import thudbook.wording.QuantityWords;
import thudbook.wording.ReachWords;
import thudbook.wording.ReadableNumbers;
import thudbook.wording.Reading;

/**
 * What differs between a recipe and one that is like it, in words that an ear or a hand
 * understands: "12 ms more hold, darker, 3 dB louder". What nobody would notice is left out.
 */
final class AlikeWords {
  /** Ratios of frequencies nearer to 1 than a semitone and a half are not told. */
  private static final double LEAST_OCTAVES = 0.125;

  private static final double CLEAR_OCTAVES = 1;

  private AlikeWords() {}

  /**
   * How the other sounds, seen from the first.
   *
   * @param own null: no prediction
   * @param other null: no prediction
   */
  static List<String> heard(@Nullable Metrics own, @Nullable Metrics other) {
    if (own == null || other == null) {
      return other == null && own != null ? List.of("no prediction yet") : List.of();
    }
    List<String> words = new ArrayList<>();
    time(words, Metric.ATTACK, own, other, "slower attack", "faster attack");
    time(words, Metric.HOLD, own, other, "more hold", "less hold");
    time(words, Metric.RELEASE_40, own, other, "longer tail", "shorter tail");
    brightness(words, own.get(Metric.BRIGHTNESS_PEAK), other.get(Metric.BRIGHTNESS_PEAK));
    decibels(words, Metric.PEAK_DB, own, other, "louder", "quieter");
    OptionalDouble thump = own.get(Metric.THUMP_PEAK);
    OptionalDouble otherThump = other.get(Metric.THUMP_PEAK);
    if (thump.isPresent()
        && otherThump.isPresent()
        && MovedNumbers.isNoticed(
            Metric.THUMP_PEAK, thump.getAsDouble(), otherThump.getAsDouble())) {
      double more = otherThump.getAsDouble() - thump.getAsDouble();
      words.add(ReadableNumbers.volts(Math.abs(more)) + (more > 0 ? " more thump" : " less thump"));
    }
    if (own.reach() != other.reach()) {
      words.add(ReachWords.brief(other.reach()));
    }
    return words;
  }

  /** What is set differently. A number that only one of them has is told as it is. */
  static List<String> set(Map<Quantity, Double> own, Map<Quantity, Double> other) {
    List<String> words = new ArrayList<>();
    for (Quantity quantity :
        List.of(Quantity.CARRIER, Quantity.INDEX, Quantity.PEAK, Quantity.DECAY)) {
      Double was = own.get(quantity);
      Double is = other.get(quantity);
      String name = FilterWords.lower(QuantityWords.name(quantity));
      if (was != null && is != null && Double.compare(was, is) != 0) {
        words.add(
            name
                + " "
                + QuantityWords.said(quantity, is)
                + " instead of "
                + QuantityWords.said(quantity, was));
      } else if (was == null && is != null) {
        words.add(name + " " + QuantityWords.said(quantity, is));
      } else if (was != null && is == null) {
        words.add("no " + name);
      }
    }
    return words;
  }

  /** What a distance means to somebody who listens. */
  static String distance(double decibels) {
    if (decibels < 1) {
      return "as good as the same";
    }
    if (decibels < 3) {
      return "very close";
    }
    if (decibels < 6) {
      return "close";
    }
    return decibels < 12 ? "related" : "of another kind";
  }

  private static void time(
      List<String> words, Metric metric, Metrics own, Metrics other, String more, String less) {
    OptionalDouble was = own.get(metric);
    OptionalDouble is = other.get(metric);
    if (was.isPresent() && is.isPresent()) {
      if (MovedNumbers.isNoticed(metric, was.getAsDouble(), is.getAsDouble())) {
        double by = is.getAsDouble() - was.getAsDouble();
        words.add(ReadableNumbers.seconds(Math.abs(by)) + " " + (by > 0 ? more : less));
      }
    } else if (was.isPresent() || is.isPresent()) {
      String name = FilterWords.lower(MetricWords.of(metric).name());
      words.add(is.isPresent() ? name + " " + Reading.of(metric, is) : "no " + name);
    }
  }

  private static void decibels(
      List<String> words, Metric metric, Metrics own, Metrics other, String more, String less) {
    OptionalDouble was = own.get(metric);
    OptionalDouble is = other.get(metric);
    if (was.isPresent()
        && is.isPresent()
        && MovedNumbers.isNoticed(metric, was.getAsDouble(), is.getAsDouble())) {
      double by = is.getAsDouble() - was.getAsDouble();
      String size = ReadableNumbers.significant(Math.rint(Math.abs(by) * 10) / 10);
      words.add(size + "\u00a0dB " + (by > 0 ? more : less));
    }
  }

  private static void brightness(List<String> words, OptionalDouble was, OptionalDouble is) {
    if (was.isEmpty() || is.isEmpty() || was.getAsDouble() <= 0 || is.getAsDouble() <= 0) {
      return;
    }
    double octaves = Math.log(is.getAsDouble() / was.getAsDouble()) / Math.log(2);
    if (Math.abs(octaves) >= LEAST_OCTAVES) {
      words.add(
          (Math.abs(octaves) >= CLEAR_OCTAVES ? "much " : "")
              + (octaves > 0 ? "brighter" : "darker"));
    }
  }
}
