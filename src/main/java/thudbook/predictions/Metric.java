package thudbook.predictions;

/** The numbers that are reported of a sound, with the names of files, JSON and pages. */
public enum Metric {
  PEAK_DB("peakDb", "dB"),
  PEAK_TIME("peakTime", "s"),
  DEAD_TIME("deadTime", "s"),
  ONSET("onset", "s"),
  ATTACK("attack", "s"),
  HOLD("hold", "s"),
  RELEASE_20("release20", "s"),
  RELEASE_40("release40", "s"),
  RELEASE_60("release60", "s"),
  FLAT_TIME("flatTime", "s"),
  LET_GO("letGo", "s"),
  IGNORED_SHARE("ignoredShare", "1"),
  THUMP_PEAK("thumpPeak", "V"),
  THUMP_TO_TONE("thumpToTone", "dB"),
  HEADROOM_POSITIVE("headroomPositive", "dB"),
  HEADROOM_NEGATIVE("headroomNegative", "dB"),
  CLIPPED_SHARE("clippedShare", "1"),
  FLOOR_DB("floorDb", "dB"),
  BRIGHTNESS_PEAK("brightnessPeak", "Hz"),
  BRIGHTNESS_AT_20("brightnessAt20", "Hz"),
  PEAK_OPENNESS("peakOpenness", "1"),
  BUILD_UP("buildUp", "dB");

  private final String key;
  private final String unit;

  Metric(String key, String unit) {
    this.key = key;
    this.unit = unit;
  }

  /** The name in JSON and in the model's description, such as {@code release40}. */
  public String key() {
    return key;
  }

  /** The unit of {@link Metrics#get}: s, V, dB, Hz or 1. */
  public String unit() {
    return unit;
  }
}
