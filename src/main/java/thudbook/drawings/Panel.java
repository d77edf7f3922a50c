package thudbook.drawings;

import java.util.List;

/**
 * One panel of a plot.
 *
 * @param share of the plot's height, above 0
 */
public record Panel(Axis axis, double share, List<Series> series, List<Guide> guides) {
  public Panel {
    series = List.copyOf(series);
    guides = List.copyOf(guides);
  }
}
