package thudbook.plots;

import java.util.List;
import java.util.stream.DoubleStream;
import thudbook.drawings.SmallDrawing;
import thudbook.predictions.SmallShape;

/**
 * The drawing of a list row: level below its own peak, 60 dB high, over a logarithmic time axis
 * from 0.5 ms to 4 s, with thin lines at 1, 10, 100 and 1000 ms. All rows have the same axes, so
 * that their shapes can be compared.
 */
public final class SmallShapeDrawing {
  private static final List<Double> DECADES =
      DoubleStream.of(0.001, 0.01, 0.1, 1)
          .mapToObj(
              seconds ->
                  Math.log(seconds / SmallShape.secondsOf(0))
                      / Math.log(
                          SmallShape.secondsOf(SmallShape.POINTS - 1) / SmallShape.secondsOf(0)))
          .toList();

  private SmallShapeDrawing() {}

  /**
   * The drawing, at most 1 kB and its label.
   *
   * @param label what it shows, in words
   * @return safe SVG
   */
  public static String svg(SmallShape shape, String label) {
    List<Double> heights =
        shape.levelsDb().stream()
            .map(level -> Double.isFinite(level) ? 1 - level / SmallShape.FLOOR_DB : 0)
            .toList();
    return SmallDrawing.svg(heights, DECADES, label);
  }
}
