package thudbook.pages;

import java.util.List;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;

/** The large plot of a recipe: output level and control voltage on one time axis. */
public final class ShapePlot {
  private ShapePlot() {}

  /** For which width of page a plot is drawn. */
  public enum Width {
    WIDE,
    NARROW
  }

  /**
   * The whole figure: both widths of the plot (the style sheet shows one), the points of the cursor
   * and the region that reads them out.
   *
   * @return safe HTML
   */
  public static String figure(Prediction prediction, Sound sound) {
    return "<figure class=\"plot-figure\">"
        + svg(prediction, sound, Width.WIDE)
        + svg(prediction, sound, Width.NARROW)
        + "</figure>";
  }

  /**
   * The plot alone.
   *
   * @return safe SVG
   */
  public static String svg(Prediction prediction, Sound sound, Width width) {
    return "<svg></svg>";
  }

  /** The numbers of the plot. */
  public static DataTable table(Prediction prediction, Sound sound) {
    return new DataTable("The shape over time", List.of("Time"), List.of());
  }
}
