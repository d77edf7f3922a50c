package thudbook.drawings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** One panel: graph paper, guides, lines, and the labels of all of them. */
final class PanelDrawing {
  private final Panel panel;
  private final Axis x;
  private final Box box;
  private final Format format;
  private final List<Line> lines;
  private final List<Box> taken = new ArrayList<>();

  PanelDrawing(Panel panel, Axis x, Box box, Format format) {
    this.panel = panel;
    this.x = x;
    this.box = box;
    this.format = format;
    this.lines = panel.series().stream().map(this::line).toList();
  }

  /**
   * A series on the page.
   *
   * @param placed all of it
   * @param pieces what is seen of it, thinned
   */
  private record Line(Series series, List<Point> placed, List<List<Point>> pieces) {}

  private Line line(Series series) {
    List<Point> placed = Polyline.placed(series.points(), x.scale(), panel.axis().scale(), box);
    return new Line(series, placed, Polyline.pieces(placed, box));
  }

  void draw(Svg svg) {
    Scale scale = panel.axis().scale();
    svg.open(
        "g",
        "class",
        "plot-panel",
        "data-top",
        box.top(),
        "data-bottom",
        box.bottom(),
        "data-low",
        scale.from() + "",
        "data-high",
        scale.to() + "",
        "data-bend",
        scale.bend() + "");
    grid(svg);
    for (Line line : lines) {
      if (line.series().filled()) {
        area(svg, line);
      }
    }
    for (Guide guide : panel.guides()) {
      svg.line(
          "plot-guide plot-guide-" + (guide.kind() == Guide.Kind.REST ? "rest" : "limit"),
          box.left(),
          y(guide.at()),
          box.right(),
          y(guide.at()));
    }
    for (Line line : lines) {
      Svg.Path path = new Svg.Path();
      line.pieces().forEach(piece -> add(piece, path));
      svg.empty("path", "class", "plot-line plot-line-" + line.series().look(), "d", path);
    }
    ticks(svg);
    List<List<Point>> placed = lines.stream().map(Line::placed).toList();
    List<Double> guides = panel.guides().stream().map(guide -> y(guide.at())).toList();
    new GuideLabels(panel.guides(), guides, placed, box, format).draw(svg, taken);
    new SeriesLabels(panel.series(), placed, guides, box, format).draw(svg, taken);
    svg.close("g");
  }

  private void grid(Svg svg) {
    Svg.Path fine = new Svg.Path();
    Svg.Path coarse = new Svg.Path();
    x.fine().forEach(at -> upright(fine, at));
    panel.axis().fine().forEach(at -> level(fine, at));
    x.ticks().forEach(tick -> upright(coarse, tick.at()));
    panel.axis().ticks().forEach(tick -> level(coarse, tick.at()));
    svg.empty("path", "class", "plot-fine", "d", fine);
    svg.empty("path", "class", "plot-coarse", "d", coarse);
    svg.empty(
        "rect",
        "class",
        "plot-frame",
        "x",
        box.left(),
        "y",
        box.top(),
        "width",
        box.width(),
        "height",
        box.height());
  }

  private void upright(Svg.Path path, double at) {
    double place = box.left() + x.scale().place(at) * box.width();
    path.move(place, box.top()).line(place, box.bottom());
  }

  private void level(Svg.Path path, double at) {
    path.move(box.left(), y(at)).line(box.right(), y(at));
  }

  private void area(Svg svg, Line line) {
    Svg.Path path = new Svg.Path();
    for (List<Point> piece : line.pieces()) {
      add(piece, path);
      path.line(piece.get(piece.size() - 1).x(), box.bottom())
          .line(piece.get(0).x(), box.bottom())
          .close();
    }
    svg.empty("path", "class", "plot-area", "d", path);
  }

  private static void add(List<Point> piece, Svg.Path path) {
    path.move(piece.get(0).x(), piece.get(0).y());
    piece.stream().skip(1).forEach(point -> path.line(point.x(), point.y()));
  }

  private void ticks(Svg svg) {
    List<Double> used = new ArrayList<>();
    for (Tick tick :
        panel.axis().ticks().stream().sorted(Comparator.comparingInt(Tick::rank)).toList()) {
      double at = y(tick.at());
      if (used.stream().allMatch(other -> Math.abs(other - at) > format.text() * 1.25)) {
        used.add(at);
        svg.text(
            "text",
            tick.label(),
            "class",
            "plot-tick",
            "x",
            box.left() - format.text() * 0.45,
            "y",
            at + format.text() * 0.35,
            "text-anchor",
            "end");
      }
    }
  }

  private double y(double value) {
    return box.bottom() - panel.axis().scale().place(value) * box.height();
  }
}
