package thudbook.drawings;

import java.util.List;

/** A line small enough to stand in a row of a list: no axes, its meaning in words. */
public final class SmallDrawing {
  private static final double WIDTH = 94;
  private static final double HEIGHT = 30;

  private SmallDrawing() {}

  /**
   * Draws heights at even distances.
   *
   * @param heights 0 (lowest) to 1
   * @param uprights places of thin upright lines, 0 (first height) to 1 (last)
   * @param label what it shows, in words
   */
  public static String svg(List<Double> heights, List<Double> uprights, String label) {
    Svg svg = new Svg();
    svg.open("svg", "class", "small-shape", "viewBox", "0 0 96 32", "role", "img");
    svg.text("title", label);
    Svg.Path lines = new Svg.Path();
    for (double at : uprights) {
      lines.move(1 + at * WIDTH, 1).line(1 + at * WIDTH, 31);
    }
    svg.empty("path", "class", "small-shape-time", "d", lines);
    Svg.Path line = new Svg.Path();
    Svg.Path area = new Svg.Path();
    int last = heights.size() - 1;
    for (int i = 0; i <= last; i++) {
      double x = 1 + WIDTH * i / last;
      double y = 1 + HEIGHT * (1 - Math.max(0, Math.min(1, heights.get(i))));
      if (i == 0) {
        line.move(x, y);
        area.move(x, y);
      } else {
        line.line(x, y);
        area.line(x, y);
      }
    }
    area.line(1 + WIDTH, 1 + HEIGHT).line(1, 1 + HEIGHT).close();
    svg.empty("path", "class", "small-shape-area", "d", area);
    svg.empty("path", "class", "small-shape-line", "d", line);
    return svg.close("svg").toString();
  }
}
