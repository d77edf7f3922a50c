package thudbook.wording;

import java.util.Arrays;
import java.util.List;
import thudbook.predictions.Metric;

/**
 * What a metric is called on a page, and what it means to an ear or a hand.
 *
 * @param group the table that it stands in
 * @param name in words
 * @param meaning one plain sentence
 */
public record MetricWords(Metric metric, Group group, String name, String meaning) {

  /** The tables of numbers, in their order. */
  public enum Group {
    SHAPE("Shape"),
    CONTROL("Control"),
    THUMP("Thump and headroom"),
    LEVEL("Level and brightness");

    private final String title;

    Group(String title) {
      this.title = title;
    }

    /** The heading of the table. */
    public String title() {
      return title;
    }
  }

  /** The words of all metrics, in the order of the model's description. */
  public static List<MetricWords> all() {
    return Arrays.stream(Metric.values()).map(MetricWords::of).toList();
  }

  /** The words of the metrics of one table. */
  public static List<MetricWords> of(Group group) {
    return all().stream().filter(words -> words.group() == group).toList();
  }

  /** The words of a metric. */
  public static MetricWords of(Metric metric) {
    return switch (metric) {
      case PEAK_DB ->
          level(
              metric, "Peak", "The loudest moment, against the source through a fully open gate.");
      case PEAK_TIME -> shape(metric, "Peak reached", "From the strike to the loudest moment.");
      case DEAD_TIME ->
          control(
              metric,
              "Dead time",
              "From the strike until the control voltage first exceeds the threshold; until then nothing happens.");
      case ONSET ->
          shape(
              metric,
              "Onset",
              "From the strike until a tenth of the rise is done: how late it speaks.");
      case ATTACK ->
          shape(metric, "Attack", "The rise from 10 % to 90 %. Short is a click, long is a swell.");
      case HOLD ->
          shape(metric, "Hold", "How long it stays above 90 % of its peak: the body of the hit.");
      case RELEASE_20 ->
          shape(
              metric,
              "Tail to −20 dB",
              "From the end of the hold until it has dropped by 20 dB: how long it seems to ring in a mix.");
      case RELEASE_40 ->
          shape(
              metric,
              "Tail to −40 dB",
              "From the end of the hold until it has dropped by 40 dB: how long it rings on its own.");
      case RELEASE_60 ->
          shape(metric, "Tail to −60 dB", "From the end of the hold until it is gone for the ear.");
      case FLAT_TIME ->
          control(
              metric,
              "Flat time",
              "How long the control voltage is at or above the ceiling, where the envelope can't shape anything.");
      case LET_GO ->
          control(
              metric,
              "Lets go",
              "When the control voltage falls through the threshold for good. From there the low-pass gate falls at its own pace.");
      case IGNORED_SHARE ->
          control(
              metric,
              "Envelope ignored",
              "The share of the decay or release that comes after letting go and is never heard.");
      case PEAK_OPENNESS ->
          control(
              metric, "Opens to", "The widest that the low-pass gate gets; 100 % is fully open.");
      case THUMP_PEAK ->
          thump(
              metric,
              "Thump",
              "The largest offset that the control pushes into the output, behind the coupling.");
      case THUMP_TO_TONE ->
          thump(
              metric,
              "Thump against tone",
              "The thump against the peak of the tone; 0 dB is as large as the tone itself.");
      case HEADROOM_POSITIVE ->
          thump(
              metric,
              "Headroom upwards",
              "How far tone and thump together stay below the positive output rail; negative is clipping. Square-like waves can need up to 3 dB more.");
      case HEADROOM_NEGATIVE ->
          thump(metric, "Headroom downwards", "The same towards the negative output rail.");
      case CLIPPED_SHARE ->
          thump(metric, "Clipped", "The largest share of a cycle that is cut off at a rail.");
      case FLOOR_DB ->
          level(
              metric,
              "Floor",
              "Where it ends up, against its peak: what the closed low-pass gate leaks.");
      case BRIGHTNESS_PEAK ->
          level(
              metric,
              "Brightness at the peak",
              "The mean frequency of what passes at the loudest moment.");
      case BRIGHTNESS_AT_20 ->
          level(
              metric,
              "Brightness at −20 dB",
              "The same when the tail has dropped by 20 dB: how much darker it gets.");
      case BUILD_UP ->
          level(metric, "Build-up", "How much louder the last strike is than the first.");
    };
  }

  /** Its exact definition, with its unit. */
  public String definition() {
    return switch (metric) {
      case PEAK_DB -> "20 log10 of the top, in dB.";
      case PEAK_TIME -> "The earliest time at which h is at its top, in s.";
      case DEAD_TIME ->
          "0 if the control voltage exceeds the threshold at once or already did; absent if it never does. In s.";
      case ONSET -> "Strike until h first reaches base + 10 % of the span, in s.";
      case ATTACK -> "10 % to 90 % of the span, first crossings, in s.";
      case HOLD ->
          "First to last falling crossing of 90 % of the span, in s; absent, with the tails, if it ends at or above that level.";
      case RELEASE_20, RELEASE_40, RELEASE_60 ->
          "From the last falling crossing of 90 % of the span to the last fall through the top less that many dB, in s; absent if it never gets there.";
      case FLAT_TIME ->
          "Time from the strike with the control voltage at or above the ceiling, in s; absent if it stays there for ever.";
      case LET_GO ->
          "The last time that the control voltage goes from above the threshold to it or below and stays, in s; absent if it never exceeds it or never stays below.";
      case IGNORED_SHARE ->
          "(end − lets go) / (end − start) of the falling segment in which it lets go, from 0 to 1; 1 if silent, 0 if it never lets go; absent for pulses and recorded control voltages.";
      case THUMP_PEAK ->
          "Largest size of the offset behind the coupling high-pass (first order), over all strikes, in V.";
      case THUMP_TO_TONE ->
          "20 log10 of thump / (source level × top), in dB; absent if there is no offset.";
      case HEADROOM_POSITIVE, HEADROOM_NEGATIVE ->
          "Least of 20 log10 of (rail ∓ offset) / tone over time, at every stage’s output, the worst counts, in dB; the tone’s peak is nominal.";
      case CLIPPED_SHARE ->
          "Largest over time of c(rail − offset) + c(rail + offset), c(x) = arccos(x / tone) / π, from 0 to 1.";
      case FLOOR_DB -> "20 log10 of the final level / top, in dB.";
      case BRIGHTNESS_PEAK ->
          "Mean of the frequencies that pass, weighted by power, at the top, in Hz.";
      case BRIGHTNESS_AT_20 -> "The same at the last fall through the top less 20 dB, in Hz.";
      case PEAK_OPENNESS -> "Largest openness y, from 0 to 1.";
      case BUILD_UP ->
          "Peak of the last strike less peak of the first, in dB; absent without a train.";
    };
  }

  private static MetricWords shape(Metric metric, String name, String meaning) {
    return new MetricWords(metric, Group.SHAPE, name, meaning);
  }

  private static MetricWords control(Metric metric, String name, String meaning) {
    return new MetricWords(metric, Group.CONTROL, name, meaning);
  }

  private static MetricWords thump(Metric metric, String name, String meaning) {
    return new MetricWords(metric, Group.THUMP, name, meaning);
  }

  private static MetricWords level(Metric metric, String name, String meaning) {
    return new MetricWords(metric, Group.LEVEL, name, meaning);
  }
}
