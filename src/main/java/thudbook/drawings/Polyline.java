package thudbook.drawings;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;

/** A series on the page: bent with its axes, cut at the edges of its panel, and thinned. */
final class Polyline {
  /** No drawn line is further than this from the whole one, in user units. */
  static final double TOLERANCE = 0.25;

  /** Straight lines on a bent axis are halved at most so often. */
  private static final int DEEPEST = 10;

  private Polyline() {}

  /** The pieces of a line on the page that lie inside a box. */
  static List<List<Point>> pieces(List<Point> placed, Box box) {
    List<List<Point>> pieces = new ArrayList<>();
    for (List<Point> piece : cut(placed, box)) {
      pieces.add(thinned(piece, TOLERANCE));
    }
    return pieces;
  }

  /** The points on the page, with as many between them as a straight line needs on bent axes. */
  static List<Point> placed(List<Point> points, Scale x, Scale y, Box box) {
    List<Point> placed = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      if (i > 0 && (x.bend() > 0 || y.bend() > 0)) {
        between(points.get(i - 1), points.get(i), x, y, box, DEEPEST, placed);
      }
      placed.add(place(points.get(i), x, y, box));
    }
    return placed;
  }

  private static void between(
      Point a, Point b, Scale x, Scale y, Box box, int deeper, List<Point> placed) {
    Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    Point onPage = place(middle, x, y, box);
    double bow = distance(onPage, place(a, x, y, box), place(b, x, y, box));
    // A quarter of the tolerance, because thinning spends the rest; and one middle that happens to
    // lie on the line must not hide a bow on either side, so the first halving is always made.
    if (deeper > 0 && (bow > TOLERANCE / 4 || deeper == DEEPEST)) {
      between(a, middle, x, y, box, deeper - 1, placed);
      placed.add(onPage);
      between(middle, b, x, y, box, deeper - 1, placed);
    }
  }

  private static Point place(Point point, Scale x, Scale y, Box box) {
    return new Point(
        box.left() + x.place(point.x()) * box.width(),
        box.bottom() - y.place(point.y()) * box.height());
  }

  /** The pieces of a line inside a box (Liang and Barsky's parametric clipping, segment wise). */
  static List<List<Point>> cut(List<Point> line, Box box) {
    List<List<Point>> pieces = new ArrayList<>();
    List<Point> piece = new ArrayList<>();
    for (int i = 1; i < line.size(); i++) {
      Point a = line.get(i - 1);
      Point b = line.get(i);
      double dx = b.x() - a.x();
      double dy = b.y() - a.y();
      double enter = 0;
      double leave = 1;
      double[][] edges = {
        {-dx, a.x() - box.left()},
        {dx, box.right() - a.x()},
        {-dy, a.y() - box.top()},
        {dy, box.bottom() - a.y()}
      };
      boolean seen = true;
      for (double[] edge : edges) {
        if (edge[0] == 0) {
          seen &= edge[1] >= 0;
        } else if (edge[0] < 0) {
          enter = Math.max(enter, edge[1] / edge[0]);
        } else {
          leave = Math.min(leave, edge[1] / edge[0]);
        }
      }
      if (!seen || enter > leave) {
        continue;
      }
      if (piece.isEmpty() || enter > 0) {
        piece = new ArrayList<>();
        pieces.add(piece);
        piece.add(new Point(a.x() + enter * dx, a.y() + enter * dy));
      }
      piece.add(new Point(a.x() + leave * dx, a.y() + leave * dy));
      if (leave < 1) {
        piece = new ArrayList<>();
      }
    }
    return pieces;
  }

  /**
   * As few of the points as keep the line within a tolerance (Ramer 1972, Douglas and Peucker 1973;
   * without recursion, so that long trains can't exhaust the stack).
   */
  static List<Point> thinned(List<Point> line, double tolerance) {
    if (line.size() < 3) {
      return line;
    }
    BitSet kept = new BitSet(line.size());
    kept.set(0);
    kept.set(line.size() - 1);
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, line.size() - 1});
    while (!open.isEmpty()) {
      int[] span = open.pop();
      int farthest = -1;
      double most = tolerance;
      for (int i = span[0] + 1; i < span[1]; i++) {
        double distance = distance(line.get(i), line.get(span[0]), line.get(span[1]));
        if (distance > most) {
          most = distance;
          farthest = i;
        }
      }
      if (farthest >= 0) {
        kept.set(farthest);
        open.push(new int[] {span[0], farthest});
        open.push(new int[] {farthest, span[1]});
      }
    }
    return kept.stream().mapToObj(line::get).toList();
  }

  /** The distance of a point from the straight piece between two others. */
  static double distance(Point point, Point a, Point b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double square = dx * dx + dy * dy;
    double along = square == 0 ? 0 : ((point.x() - a.x()) * dx + (point.y() - a.y()) * dy) / square;
    double t = Math.max(0, Math.min(1, along));
    return Math.hypot(point.x() - a.x() - t * dx, point.y() - a.y() - t * dy);
  }
}
