package thudbook.patching;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
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
  /** A neighbour within this many decibels and this ratio of times is as good. */
  private static final double GOOD_DECIBELS = 1.5;

  private static final double GOOD_RATIO = 1.15;

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
   * How touchy the knob is: the largest of the distance of the peak over 1.5 dB and the logarithms
   * of the ratios of hold and release40 over that of 1.15, each between the exact position and the
   * worst one within the tolerance. Infinite if one of them is lost or the gate falls silent.
   */
  public double touchiness() {
    boolean silence = reaches.contains(Reach.SILENT) && exact.reach() != Reach.SILENT;
    if (silence) {
      return Double.POSITIVE_INFINITY;
    }
    double peak = distance(Metric.PEAK_DB, false) / GOOD_DECIBELS;
    double hold = distance(Metric.HOLD, true) / Math.log(GOOD_RATIO);
    double release = distance(Metric.RELEASE_40, true) / Math.log(GOOD_RATIO);
    return Math.max(peak, Math.max(hold, release));
  }

  /** Whether the tolerance of the knob can be heard: {@link #touchiness} above 1. */
  public boolean isTouchy() {
    return touchiness() > 1;
  }

  private double distance(Metric metric, boolean asRatio) {
    Span span = spans.get(metric);
    if (span == null || exact.get(metric).isEmpty()) {
      return 0;
    }
    if (span.absentSomewhere()) {
      return Double.POSITIVE_INFINITY;
    }
    double value = exact.get(metric).getAsDouble();
    if (!asRatio) {
      return Math.max(span.highest() - value, value - span.lowest());
    }
    return value <= 0 || span.lowest() <= 0
        ? 0
        : Math.max(Math.log(span.highest() / value), Math.log(value / span.lowest()));
  }
}
