package thudbook.drawings;

import java.util.ArrayList;
import java.util.List;

/**
 * A plot as SVG: title and description for readers who don't see it, the parts in a band above,
 * graph paper, lines, labels that don't touch, and a cursor that a script may move.
 *
 * <p>Nothing in it is coloured here. The style sheet knows the classes; without one it is black on
 * white.
 */
public final class PlotDrawing {
  private final Plot plot;
  private final Format format;
  private final double line;
  private final double left;
  private final double right;
  private final Svg svg = new Svg();

  private PlotDrawing(Plot plot, Format format) {
    this.plot = plot;
    this.format = format;
    line = format.text() * 1.3;
    left = format.left();
    right = format.width() - Math.max(format.right(), 1);
  }

  /**
   * The drawing.
   *
   * @return one {@code svg} element; all texts escaped, no styles, no scripts
   */
  public static String svg(Plot plot, Format format) {
    return new PlotDrawing(plot, format).draw();
  }

  private String draw() {
    PartsBand band = new PartsBand(plot.parts(), plot.x().scale(), format);
    boolean ownRow = plot.panels().size() == 1 && !plot.moments().isEmpty();
    double top = line + band.height() + (ownRow ? 1.3 * line : 0);
    double shares = plot.panels().stream().mapToDouble(Panel::share).sum();
    List<Box> boxes = new ArrayList<>();
    double y = top;
    for (Panel panel : plot.panels()) {
      double height = format.panels() * panel.share() / shares;
      boxes.add(new Box(left, y, right, y + height));
      y += height + 2 * line;
    }
    double bottom = boxes.get(boxes.size() - 1).bottom();
    double height = bottom + 2.9 * line;
    start(height);
    svg.text(
        "text",
        plot.panels().get(0).axis().title(),
        "class",
        "plot-title",
        "x",
        0.0,
        "y",
        line * 0.8);
    band.draw(svg, line, boxes.get(0));
    // Lines of moments lie below the panels, so that labels of the panels stay clear of them.
    for (Moment moment : plot.moments()) {
      for (Box box : boxes) {
        svg.line("plot-moment", x(moment.at()), box.top(), x(moment.at()), box.bottom());
      }
    }
    for (int i = 0; i < boxes.size(); i++) {
      new PanelDrawing(plot.panels().get(i), plot.x(), boxes.get(i), format).draw(svg);
    }
    momentLabels(boxes);
    strikes(bottom);
    timeAxis(bottom);
    cursor(boxes);
    return svg.close("svg").toString();
  }

  private void start(double height) {
    Scale x = plot.x().scale();
    svg.open(
        "svg",
        "class",
        "plot " + format.name(),
        "viewBox",
        "0 0 " + Svg.number(format.width()) + " " + Svg.number(height),
        "font-size",
        format.text(),
        "role",
        "img",
        "data-left",
        left,
        "data-right",
        right,
        "data-from",
        x.from() + "",
        "data-to",
        x.to() + "",
        "data-bend",
        x.bend() + "");
    svg.text("title", plot.title()).text("desc", plot.description());
  }

  /** The labels of moments, in the row above the last panel, beside its title. */
  private void momentLabels(List<Box> boxes) {
    int last = boxes.size() - 1;
    double baseline = boxes.get(last).top() - line * 0.45;
    double free = 0;
    if (last > 0) {
      String title = plot.panels().get(last).axis().title();
      svg.text("text", title, "class", "plot-title", "x", 0.0, "y", baseline);
      free = TextWidth.of(title, format.text()) + format.text();
    }
    int count = plot.moments().size();
    double[] centers = new double[count];
    double[] widths = new double[count];
    for (int i = 0; i < count; i++) {
      centers[i] = x(plot.moments().get(i).at());
      widths[i] = TextWidth.of(plot.moments().get(i).label(), format.text());
    }
    double[] starts = Spread.starts(centers, widths, format.text() / 2, free, format.width());
    for (int i = 0; i < count; i++) {
      double down = boxes.get(last).top();
      double middle = starts[i] + widths[i] / 2;
      svg.line("plot-leader", middle, baseline + format.text() * 0.25, centers[i], down);
      svg.text(
          "text",
          plot.moments().get(i).label(),
          "class",
          "plot-moment-label",
          "x",
          starts[i],
          "y",
          baseline);
    }
  }

  private void strikes(double bottom) {
    if (plot.strikes().isEmpty()) {
      return;
    }
    Svg.Path path = new Svg.Path();
    for (double strike : plot.strikes()) {
      double x = x(strike);
      path.move(x, bottom + 1).line(x - 3, bottom + 7).line(x + 3, bottom + 7).close();
    }
    svg.empty("path", "class", "plot-strikes", "d", path);
  }

  private void timeAxis(double bottom) {
    double baseline = bottom + line * 1.35;
    List<Box> taken = new ArrayList<>();
    for (int rank = 0; rank < 4; rank++) {
      for (Tick tick : plot.x().ticks()) {
        if (tick.rank() != rank) {
          continue;
        }
        double width = TextWidth.of(tick.label(), format.text());
        double start = Math.max(0, Math.min(format.width() - width, x(tick.at()) - width / 2));
        Box box = Box.ofText(tick.label(), format.text(), start, baseline);
        Box wider =
            new Box(
                box.left() - format.text() / 3,
                box.top(),
                box.right() + format.text() / 3,
                box.bottom());
        if (taken.stream().noneMatch(wider::overlaps)) {
          taken.add(box);
          svg.text("text", tick.label(), "class", "plot-tick", "x", start, "y", baseline);
        }
      }
    }
    String title = plot.x().title() + (plot.strikes().isEmpty() ? "" : " \u00a0 ▲ strike");
    svg.text("text", title, "class", "plot-title", "x", left, "y", baseline + line * 1.15);
  }

  /** The cursor: nothing is seen of it until a script gives it a place. */
  private void cursor(List<Box> boxes) {
    svg.open("g", "class", "plot-cursor");
    for (int i = 0; i < boxes.size(); i++) {
      svg.line("plot-cursor-line", 0, boxes.get(i).top(), 0, boxes.get(i).bottom());
    }
    svg.close("g");
  }

  private double x(double value) {
    return left + plot.x().scale().place(value) * (right - left);
  }
}
