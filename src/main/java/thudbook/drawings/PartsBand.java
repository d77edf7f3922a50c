package thudbook.drawings;

import java.util.List;
import java.util.stream.Stream;

/** The band above the first panel: a strip of parts, their names and numbers above it. */
final class PartsBand {
  private static final double STRIP = 9;

  private final List<Part> parts;
  private final Scale scale;
  private final Format format;
  private final double line;
  private final double leader;

  PartsBand(List<Part> parts, Scale scale, Format format) {
    this.parts = parts;
    this.scale = scale;
    this.format = format;
    line = format.text() * 1.3;
    leader = format.text() * 1.2;
  }

  /** The lines of a part's label. */
  private List<String> lines(Part part) {
    if (format.stacked()) {
      return Stream.concat(Stream.of(part.name()), part.numbers().stream()).toList();
    }
    return List.of(part.name(), String.join(" ", part.numbers()));
  }

  private int rows() {
    return parts.stream().mapToInt(part -> lines(part).size()).max().orElse(0);
  }

  /** Height of the band; 0 without parts. */
  double height() {
    return parts.isEmpty() ? line * 0.2 : line * 0.4 + rows() * line + leader + STRIP;
  }

  /** Draws the band from a height on, and where its parts end into the panel below it. */
  void draw(Svg svg, double top, Box panel) {
    int count = parts.size();
    double[] starts = new double[count];
    double[] ends = new double[count];
    double[] centers = new double[count];
    double[] widths = new double[count];
    for (int i = 0; i < count; i++) {
      Part part = parts.get(i);
      starts[i] = place(part.from(), panel);
      ends[i] = Math.max(place(part.to(), panel), starts[i] + 1);
      centers[i] = (starts[i] + ends[i]) / 2;
      widths[i] =
          lines(part).stream()
              .mapToDouble(text -> TextWidth.of(text, format.text()))
              .max()
              .orElse(0);
    }
    double[] labels = Spread.starts(centers, widths, format.text() / 2, 0, format.width());
    double strip = panel.top() - STRIP;
    double foot = strip - leader;
    for (int i = 0; i < count; i++) {
      List<String> lines = lines(parts.get(i));
      double first = foot - (lines.size() - 1) * line - line * 0.2;
      double middle = labels[i] + widths[i] / 2;
      for (int k = 0; k < lines.size(); k++) {
        svg.text(
            "text",
            lines.get(k),
            "class",
            k == 0 ? "plot-part-name" : "plot-part-number",
            "x",
            middle,
            "y",
            first + k * line,
            "text-anchor",
            "middle");
      }
      svg.line("plot-leader", middle, foot + line * 0.1, centers[i], strip - 1);
      svg.empty(
          "rect",
          "class",
          "plot-part plot-part-" + parts.get(i).look(),
          "x",
          starts[i],
          "y",
          strip,
          "width",
          ends[i] - starts[i],
          "height",
          STRIP);
      svg.line("plot-bound", starts[i], panel.top(), starts[i], panel.bottom());
      svg.line("plot-bound", ends[i], panel.top(), ends[i], panel.bottom());
    }
  }

  private double place(double value, Box panel) {
    double share = Math.max(0, Math.min(1, scale.place(value)));
    return panel.left() + share * panel.width();
  }
}
