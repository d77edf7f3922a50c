package thudbook.patching;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import thudbook.predictions.Departure;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Reach;

/**
 * What follows from how exactly one knob can be read back: the range of each metric while the knob
 * goes through all positions within its tolerance and everything else stays.
 *
 * @param lowest the value of the knob at the lower end of its tolerance, in its SI unit
 * @param highest likewise at the upper end
 * @param exact the metrics at the position that is written down
 * @param spans of the metrics that exist somewhere in the tolerance
 * @param reaches how far the gates open, somewhere in the tolerance
 */
public record KnobTolerance(
    DialledSetting knob,
    double lowest,
    double highest,
    Metrics exact,
    Map<Metric, Span> spans,
    Set<Reach> reaches) {
  public KnobTolerance {
    spans = Map.copyOf(new EnumMap<>(spans));
    reaches = Set.copyOf(EnumSet.copyOf(reaches));
  }

  /**
   * The range of a metric.
   *
   * @param absentSomewhere whether it does not exist for some positions
   */
  public record Span(double lowest, double highest, boolean absentSomewhere) {}

  /**
   * How touchy the knob is: the largest {@link Departure} of peak, hold and release40 between the
   * exact position and the worst one within the tolerance. Infinite if the gate may fall silent, or
   * if hold or release40 may be lost.
   */
  public double touchiness() {
    boolean silence = reaches.contains(Reach.SILENT) && exact.reach() != Reach.SILENT;
    if (silence) {
      return Double.POSITIVE_INFINITY;
    }
    double peak = worst(Metric.PEAK_DB, Departure::ofPeaks);
    double hold = worst(Metric.HOLD, Departure::ofTimes);
    return Math.max(peak, Math.max(hold, worst(Metric.RELEASE_40, Departure::ofTimes)));
  }

  /** Whether the tolerance of the knob can be heard: {@link #touchiness} above 1. */
  public boolean isTouchy() {
    return touchiness() > 1;
  }

  private double worst(Metric metric, DoubleBinaryOperator departure) {
    Span span = spans.get(metric);
    OptionalDouble value = exact.get(metric);
    if (span == null || value.isEmpty()) {
      return 0;
    }
    if (span.absentSomewhere()) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max(
        departure.applyAsDouble(value.getAsDouble(), span.lowest()),
        departure.applyAsDouble(value.getAsDouble(), span.highest()));
  }
}
