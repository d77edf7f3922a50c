package thudbook.predictions;

import java.util.List;

/**
 * A sound over time, thinned so that straight lines between its points stay close to it.
 *
 * @param points in the order of time
 * @param worstDb the largest distance of the straight lines from the exact level above top −60 dB
 */
public record Curve(List<CurvePoint> points, double worstDb) {
  public Curve {
    points = List.copyOf(points);
  }
}
