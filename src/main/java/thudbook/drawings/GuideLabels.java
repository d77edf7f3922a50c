package thudbook.drawings;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Labels of guides: beside the panel where there is room; else inside, above their lines, at the
 * end where fewer lines of the panel run.
 */
final class GuideLabels {
  private static final double INSET = 3;

  private final List<Guide> guides;
  private final List<Double> heights;
  private final List<List<Point>> lines;
  private final Box box;
  private final Format format;
  private final double row;

  /**
   * Labels for guides.
   *
   * @param heights of the guides on the page
   * @param lines of the panel on the page
   */
  GuideLabels(
      List<Guide> guides, List<Double> heights, List<List<Point>> lines, Box box, Format format) {
    this.guides = guides;
    this.heights = heights;
    this.lines = lines;
    this.box = box;
    this.format = format;
    row = format.text() * 1.2;
  }

  /**
   * Draws the labels.
   *
   * @param taken where other labels stand already; grows
   */
  void draw(Svg svg, List<Box> taken) {
    boolean outside = format.right() > 0;
    List<Integer> order =
        IntStream.range(0, guides.size())
            .boxed()
            .sorted(Comparator.comparingDouble(heights::get))
            .toList();
    double[] centers =
        order.stream()
            .mapToDouble(i -> heights.get(i) - (outside ? 0 : format.text() * 0.65))
            .toArray();
    double[] sizes = order.stream().mapToDouble(i -> row).toArray();
    double[] starts = Spread.starts(centers, sizes, 0, box.top(), box.bottom() + row);
    for (int k = 0; k < starts.length; k++) {
      double baseline = starts[k] + row / 2 + format.text() * 0.35;
      int i = order.get(k);
      taken.add(
          outside
              ? beside(svg, guides.get(i).label(), heights.get(i), baseline)
              : inside(svg, guides.get(i).label(), baseline));
    }
  }

  private Box beside(Svg svg, String label, double height, double baseline) {
    double start = box.right() + format.text();
    svg.line("plot-leader", box.right(), height, start - INSET, baseline - format.text() * 0.35);
    svg.text("text", label, "class", "plot-guide-label", "x", start, "y", baseline);
    return Box.ofText(label, format.text(), start, baseline);
  }

  private Box inside(Svg svg, String label, double baseline) {
    double width = TextWidth.of(label, format.text());
    Box atEnd = Box.ofText(label, format.text(), box.right() - INSET - width, baseline);
    Box atStart = Box.ofText(label, format.text(), box.left() + INSET, baseline);
    boolean end = crossings(atEnd) <= crossings(atStart);
    svg.text(
        "text",
        label,
        "class",
        "plot-guide-label plot-halo",
        "x",
        end ? atEnd.right() : atStart.left(),
        "y",
        baseline,
        "text-anchor",
        end ? "end" : "start");
    return end ? atEnd : atStart;
  }

  private long crossings(Box place) {
    return lines.stream().filter(line -> SeriesLabels.crosses(line, place)).count();
  }
}
