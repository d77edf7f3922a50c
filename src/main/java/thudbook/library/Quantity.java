package thudbook.library;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Metric;
import thudbook.quantities.Dimension;

/**
 * A number of a recipe that can be searched and sorted by: every predicted metric, and the main
 * settings of the sound. A recipe may lack any of them.
 */
public enum Quantity {
  PEAK_DB(Metric.PEAK_DB, Bins.linear(-60, 12), "peak level", "peak"),
  PEAK_TIME(Metric.PEAK_TIME, Bins.TIME, "peak time"),
  DEAD_TIME(Metric.DEAD_TIME, Bins.TIME, "dead time"),
  ONSET(Metric.ONSET, Bins.TIME, "onset"),
  ATTACK(Metric.ATTACK, Bins.TIME, "attack"),
  HOLD(Metric.HOLD, Bins.TIME, "hold"),
  RELEASE_20(Metric.RELEASE_20, Bins.TIME, "tail to 20"),
  RELEASE_40(Metric.RELEASE_40, Bins.TIME, "tail to 40", "tail"),
  RELEASE_60(Metric.RELEASE_60, Bins.TIME, "tail to 60"),
  FLAT_TIME(Metric.FLAT_TIME, Bins.TIME, "flat time"),
  LET_GO(Metric.LET_GO, Bins.TIME, "letting go", "lets go"),
  IGNORED_SHARE(Metric.IGNORED_SHARE, Bins.SHARE, "ignored share", "ignored"),
  THUMP_PEAK(Metric.THUMP_PEAK, Bins.logarithmic(0.001, 10), "thump"),
  THUMP_TO_TONE(Metric.THUMP_TO_TONE, Bins.linear(-60, 12), "thump to tone"),
  HEADROOM_POSITIVE(Metric.HEADROOM_POSITIVE, Bins.linear(-20, 40), "headroom upwards"),
  HEADROOM_NEGATIVE(Metric.HEADROOM_NEGATIVE, Bins.linear(-20, 40), "headroom downwards"),
  CLIPPED_SHARE(Metric.CLIPPED_SHARE, Bins.SHARE, "clipped share", "clipped"),
  FLOOR_DB(Metric.FLOOR_DB, Bins.linear(-140, 0), "floor"),
  BRIGHTNESS_PEAK(Metric.BRIGHTNESS_PEAK, Bins.FREQUENCY, "brightness"),
  BRIGHTNESS_AT_20(Metric.BRIGHTNESS_AT_20, Bins.FREQUENCY, "brightness at 20"),
  PEAK_OPENNESS(Metric.PEAK_OPENNESS, Bins.SHARE, "openness"),
  BUILD_UP(Metric.BUILD_UP, Bins.linear(-6, 18), "build-up"),
  /** The modulation index of an FM source. */
  INDEX("index", Dimension.NUMBER, Bins.logarithmic(0.05, 50), "index", "modulation index"),
  /** The peak of the envelope. */
  PEAK("peak", Dimension.VOLTAGE, Bins.linear(0, 12), "envelope peak", "peak"),
  /** The decay of the envelope. */
  DECAY("decay", Dimension.TIME, Bins.TIME, "decay"),
  /** The carrier of an FM source, or the frequency of an oscillator. */
  CARRIER("carrier", Dimension.FREQUENCY, Bins.FREQUENCY, "carrier", "frequency");

  private final String key;
  private final Dimension dimension;
  private final @Nullable Metric metric;

  // A record, and an unmodifiable list.
  @SuppressWarnings("ImmutableEnumChecker")
  private final Bins bins;

  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> names;

  Quantity(Metric metric, Bins bins, String... names) {
    this(metric.key(), dimension(metric), metric, bins, names);
  }

  Quantity(String key, Dimension dimension, Bins bins, String... names) {
    this(key, dimension, null, bins, names);
  }

  Quantity(String key, Dimension dimension, @Nullable Metric metric, Bins bins, String... names) {
    this.key = key;
    this.dimension = dimension;
    this.metric = metric;
    this.bins = bins;
    this.names = List.of(names);
  }

  private static Dimension dimension(Metric metric) {
    return switch (metric.unit()) {
      case "s" -> Dimension.TIME;
      case "V" -> Dimension.VOLTAGE;
      case "dB" -> Dimension.LEVEL;
      case "Hz" -> Dimension.FREQUENCY;
      default -> Dimension.SHARE;
    };
  }

  /** The name in addresses and JSON, such as {@code release40}. */
  public String key() {
    return key;
  }

  /** What it measures; values are in the SI unit of it. */
  public Dimension dimension() {
    return dimension;
  }

  /** The predicted metric that it is; empty for a setting. */
  public Optional<Metric> metric() {
    return Optional.ofNullable(metric);
  }

  /** How it is counted in a small histogram. */
  public Bins bins() {
    return bins;
  }

  /** What people call it, the usual name first. The same word may mean two, told by their unit. */
  public List<String> names() {
    return names;
  }

  /** The quantity of a key. */
  public static Optional<Quantity> ofKey(String key) {
    return Arrays.stream(values()).filter(quantity -> quantity.key.equals(key)).findFirst();
  }

  /** Which column of the catalogue it is. */
  @SuppressWarnings("EnumOrdinal") // In memory only; nothing of it is ever written.
  int column() {
    return ordinal();
  }

  /** The quantity that is a metric. */
  public static Quantity of(Metric metric) {
    return valueOf(metric.name());
  }
}
