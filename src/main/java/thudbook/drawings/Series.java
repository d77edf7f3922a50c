package thudbook.drawings;

import java.util.List;

/**
 * A line through points, straight between them in the units of its axes. Two points of equal x are
 * a jump.
 *
 * @param points in the order of x; none draws nothing
 * @param look 1 to 7: the style sheet gives each its colour and its dashes; 5 is what was before
 * @param label written beside the line; empty: none
 * @param filled whether the area below it is tinted
 */
public record Series(List<Point> points, int look, String label, boolean filled) {
  public Series {
    points = List.copyOf(points);
    if (look < 1 || look > 7) {
      throw new IllegalArgumentException("a look from 1 to 7 was expected, found " + look);
    }
  }
}
