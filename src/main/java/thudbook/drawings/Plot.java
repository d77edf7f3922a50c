package thudbook.drawings;

import java.util.List;

/**
 * Panels over one x axis.
 *
 * @param title its name in one line
 * @param description what it shows, with the numbers, for readers who don't see it
 * @param panels from top to bottom, at least one
 * @param parts of the x axis, in order, marked above the first panel; may be none
 * @param moments lines down through all panels
 * @param strikes places on the x axis that are marked with ticks below the last panel
 */
public record Plot(
    String title,
    String description,
    Axis x,
    List<Panel> panels,
    List<Part> parts,
    List<Moment> moments,
    List<Double> strikes) {
  public Plot {
    panels = List.copyOf(panels);
    parts = List.copyOf(parts);
    moments = List.copyOf(moments);
    strikes = List.copyOf(strikes);
    if (panels.isEmpty()) {
      throw new IllegalArgumentException("a plot has at least one panel");
    }
  }
}
