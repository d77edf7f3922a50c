package thudbook.drawings;

import java.util.List;

/**
 * Names lines where they are farthest from each other, so that a label says without colour which
 * line it means.
 */
final class SeriesLabels {
  /** How many places along the x axis are tried. */
  private static final int TRIED = 60;

  /** What a place on a guide is worth against a free one; its halo keeps it readable. */
  private static final double COVERING = 0.4;

  private final List<Series> series;

  /** The points of each series on the page. */
  private final List<List<Point>> lines;

  /** Heights of the guides, which a label should rather not cover. */
  private final List<Double> guides;

  private final Box box;
  private final Format format;

  SeriesLabels(
      List<Series> series, List<List<Point>> lines, List<Double> guides, Box box, Format format) {
    this.series = series;
    this.lines = lines;
    this.guides = guides;
    this.box = box;
    this.format = format;
  }

  /**
   * Draws the labels.
   *
   * @param taken where other labels stand already; grows
   */
  void draw(Svg svg, List<Box> taken) {
    for (int i = 0; i < series.size(); i++) {
      if (!series.get(i).label().isEmpty() && !lines.get(i).isEmpty()) {
        place(svg, i, taken);
      }
    }
  }

  private void place(Svg svg, int line, List<Box> taken) {
    String label = series.get(line).label();
    double width = TextWidth.of(label, format.text());
    Box best = Box.ofText(label, format.text(), box.left() + 4, box.top() + format.text());
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < TRIED; i++) {
      double x = box.left() + 4 + (box.width() - width - 8) * i / TRIED;
      double y = height(lines.get(line), x + width / 2);
      // Just above the line, or just below it.
      for (double shift : new double[] {-0.6, 1.15}) {
        Box place = Box.ofText(label, format.text(), x, y + shift * format.text());
        double room = room(line, place, y, taken);
        if (room > most) {
          most = room;
          best = place;
        }
      }
    }
    taken.add(best);
    svg.text(
        "text",
        label,
        "class",
        "plot-series-label plot-halo",
        "x",
        best.left(),
        "y",
        best.bottom() - 0.25 * format.text());
  }

  /** How far the other lines are; less than 0 where the label would touch something. */
  private double room(int line, Box place, double y, List<Box> taken) {
    if (place.top() < box.top()
        || place.bottom() > box.bottom()
        || taken.stream().anyMatch(place::overlaps)) {
      return Double.NEGATIVE_INFINITY;
    }
    double room = box.height();
    for (int other = 0; other < lines.size(); other++) {
      if (crosses(lines.get(other), place)) {
        room -= 2 * box.height();
      }
      if (other != line) {
        double middle = (place.left() + place.right()) / 2;
        room = Math.min(room, Math.abs(height(lines.get(other), middle) - y));
      }
    }
    boolean covers = guides.stream().anyMatch(at -> at > place.top() && at < place.bottom());
    return covers && room > 0 ? COVERING * room : room;
  }

  /** Whether a line goes through a label's place. */
  static boolean crosses(List<Point> line, Box place) {
    if (line.isEmpty()) {
      return false;
    }
    double least = Math.min(height(line, place.left()), height(line, place.right()));
    double most = Math.max(height(line, place.left()), height(line, place.right()));
    for (int i = firstFrom(line, place.left());
        i < line.size() && line.get(i).x() <= place.right();
        i++) {
      least = Math.min(least, line.get(i).y());
      most = Math.max(most, line.get(i).y());
    }
    return least < place.bottom() && most > place.top();
  }

  /** The height of a line at a place, on the page. */
  private static double height(List<Point> line, double x) {
    int i = firstFrom(line, x);
    if (i == 0 || i == line.size()) {
      return line.isEmpty() ? 0 : line.get(Math.min(i, line.size() - 1)).y();
    }
    Point a = line.get(i - 1);
    Point b = line.get(i);
    return b.x() == a.x() ? b.y() : a.y() + (x - a.x()) / (b.x() - a.x()) * (b.y() - a.y());
  }

  /** The first point at or after a place. */
  private static int firstFrom(List<Point> line, double x) {
    int low = 0;
    int high = line.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (line.get(middle).x() < x) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
