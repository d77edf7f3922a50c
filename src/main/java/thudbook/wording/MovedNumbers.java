package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;

/** Numbers that moved so far that an ear or a hand notices, in words such as "hold +14 ms". */
public final class MovedNumbers {
  private static final List<Metric> TOLD =
      List.of(
          Metric.PEAK_DB,
          Metric.DEAD_TIME,
          Metric.ATTACK,
          Metric.HOLD,
          Metric.RELEASE_40,
          Metric.THUMP_PEAK,
          Metric.BRIGHTNESS_PEAK);

  /** Ratios nearer to 1 than this are not told: about what a knob can be set to again. */
  private static final double RATIO = 0.05;

  private static final double LEAST_DECIBELS = 0.5;
  private static final double LEAST_SECONDS = 0.0005;
  private static final double LEAST_VOLTS = 0.02;

  private MovedNumbers() {}

  /** What moved between two states of a recipe, both predicted with today's gates. */
  public static List<String> words(Recipe before, Recipe after, Listening listening) {
    return words(
        listening.hear(before).metrics().orElse(null),
        listening.hear(after).metrics().orElse(null));
  }

  /**
   * What moved, in the order of the model's description.
   *
   * @param before null: there was no prediction
   * @param after null: there is none
   */
  public static List<String> words(@Nullable Metrics before, @Nullable Metrics after) {
    if (before == null) {
      return after == null ? List.of() : List.of("can be predicted");
    }
    if (after == null) {
      return List.of("can’t be predicted any more");
    }
    List<String> words = new ArrayList<>();
    if (before.reach() != after.reach()) {
      words.add(ReachWords.brief(before.reach()) + " → " + ReachWords.brief(after.reach()));
    }
    for (Metric metric : TOLD) {
      OptionalDouble was = before.get(metric);
      OptionalDouble is = after.get(metric);
      String name = name(metric);
      if (was.isPresent() && is.isPresent()) {
        if (isNoticed(metric, was.getAsDouble(), is.getAsDouble())) {
          words.add(name + " " + signed(metric, is.getAsDouble() - was.getAsDouble()));
        }
      } else if (was.isPresent() || is.isPresent()) {
        words.add(name + " " + Reading.of(metric, was) + " → " + Reading.of(metric, is));
      }
    }
    return words;
  }

  /** Whether a number moved so far that it is worth a word. */
  public static boolean isNoticed(Metric metric, double before, double after) {
    double moved = Math.abs(after - before);
    double size = Math.max(Math.abs(before), Math.abs(after));
    return switch (metric.unit()) {
      case "dB" -> moved >= LEAST_DECIBELS;
      case "s" -> moved >= LEAST_SECONDS && moved >= RATIO * size;
      case "V" -> moved >= LEAST_VOLTS && moved >= RATIO * size;
      default -> moved >= RATIO * size && size > 0;
    };
  }

  private static String signed(Metric metric, double difference) {
    return (difference < 0 ? "−" : "+") + Reading.of(metric, Math.abs(difference));
  }

  private static String name(Metric metric) {
    String name = MetricWords.of(metric).name();
    return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }
}
