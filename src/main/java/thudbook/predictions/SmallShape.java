package thudbook.predictions;

import java.util.List;

/**
 * The drawing of a list row: the lone strike's level at fixed times.
 *
 * @param levelsDb 48 levels in dB relative to its own peak, floor −60
 */
public record SmallShape(List<Double> levelsDb) {
  /** Number of points. */
  public static final int POINTS = 48;

  /** Lowest level that is told, in dB. */
  public static final double FLOOR_DB = -60;

  public SmallShape {
    levelsDb = List.copyOf(levelsDb);
    if (levelsDb.size() != POINTS) {
      throw new IllegalArgumentException("48 levels were expected, found " + levelsDb.size());
    }
  }

  /** The time of point k, 0 to 47, in seconds: 0.5 ms · 8000^(k/47). */
  public static double secondsOf(int k) {
    return 0.5e-3 * Math.pow(8000, k / 47.0);
  }
}
