package thudbook.plots;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import thudbook.drawings.Axis;
import thudbook.drawings.Format;
import thudbook.drawings.Panel;
import thudbook.drawings.Plot;
import thudbook.drawings.PlotDrawing;
import thudbook.drawings.Point;
import thudbook.drawings.Series;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.wording.ReadableNumbers;

/**
 * The output levels of several sounds over each other, one strike of each from rest, on the time
 * axis of {@link StrikeTime}.
 *
 * @param lines at least one
 */
public record LevelsPlot(String title, List<Line> lines) {
  /** How far below the highest peak the levels are drawn, in dB. */
  private static final double DEPTH_DB = 66;

  /** How far below its top a curve is followed, in dB. */
  private static final double CURVE_DEPTH_DB = 60;

  /** Levels below this are drawn as this; an infinitely low one has no place on a page. */
  private static final double LOWEST_DB = -400;

  private static final double[] TOLD_SECONDS = {
    0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5
  };

  public LevelsPlot {
    lines = List.copyOf(lines);
  }

  /**
   * One sound.
   *
   * @param label written beside its line; empty: none
   * @param name in words
   * @param look as {@link Series} has them
   * @param prediction of one strike, with its curve
   */
  public record Line(String label, String name, int look, Prediction prediction) {
    /** One strike of a sound. */
    public static Line of(String label, String name, int look, Sound sound) {
      return new Line(label, name, look, Predictor.predictWithCurve(sound.struckOnce()));
    }

    Curve curve() {
      return Objects.requireNonNull(prediction.curve());
    }
  }

  /** The figure, in a width for wide pages and one for phones; safe HTML. */
  public String figure(Format wide) {
    return "<figure class=\"plot-figure\"><div class=\"plot-frame-box\">"
        + svg(wide)
        + svg(Format.NARROW)
        + "</div></figure>";
  }

  private String svg(Format format) {
    double last = lines.stream().mapToDouble(line -> end(line.curve())).max().orElse(0);
    Axis time = StrikeTime.axis(last);
    List<Series> series = new ArrayList<>();
    for (Line line : lines) {
      series.add(
          new Series(
              points(line.curve(), time.scale().from(), last), line.look(), line.label(), false));
    }
    double peak = LOWEST_DB;
    double least = 0;
    for (Series one : series) {
      for (Point point : one.points()) {
        peak = Math.max(peak, point.y());
        least = Math.min(least, point.y());
      }
    }
    double high = 10 * Math.ceil((peak - 0.01) / 10) + 2;
    double low = Math.min(Math.max(least - 4, peak - DEPTH_DB), peak - 14);
    Axis level = Axis.linear("output level, dB", low, high, 8, ReadableNumbers::significant);
    return PlotDrawing.svg(
        new Plot(
            title,
            words(),
            time,
            List.of(new Panel(level, 1, series, List.of())),
            List.of(),
            List.of(),
            List.of()),
        format);
  }

  private String words() {
    List<String> words = new ArrayList<>();
    for (Line line : lines) {
      String peak =
          line.curve().points().stream()
              .max((a, b) -> Double.compare(a.outputDb(), b.outputDb()))
              .map(
                  point ->
                      ReadableNumbers.decibels(point.outputDb())
                          + " after "
                          + ReadableNumbers.seconds(point.seconds()))
              .orElse(ReadableNumbers.ABSENT);
      words.add(line.name() + " peaks at " + peak);
    }
    return "Output level over time after one strike: " + String.join("; ", words) + ".";
  }

  /** The levels at some times. */
  public DataTable table() {
    List<String> header = new ArrayList<>(List.of("Time"));
    lines.forEach(line -> header.add(line.name()));
    double last = lines.stream().mapToDouble(line -> end(line.curve())).max().orElse(0);
    List<List<String>> rows = new ArrayList<>();
    for (double at : TOLD_SECONDS) {
      if (at <= last) {
        List<String> row = new ArrayList<>(List.of(ReadableNumbers.seconds(at)));
        for (Line line : lines) {
          row.add(levelAt(line.curve(), at));
        }
        rows.add(row);
      }
    }
    return new DataTable(title, header, rows);
  }

  /**
   * From the start of the axis to where the curve ends, or to the end of the axis for one that has
   * reached its floor and stays there.
   */
  private static List<Point> points(Curve curve, double from, double last) {
    List<Point> points = new ArrayList<>();
    for (CurvePoint point : curve.points()) {
      if (!Double.isNaN(point.outputDb())) {
        points.add(new Point(point.seconds(), Math.max(LOWEST_DB, point.outputDb())));
      }
    }
    if (points.isEmpty()) {
      return points;
    }
    if (points.get(0).x() > from) {
      points.add(0, new Point(from, points.get(0).y()));
    }
    Point end = points.get(points.size() - 1);
    if (end.x() < last && endsAtFloor(curve)) {
      points.add(new Point(last, end.y()));
    }
    return Collections.unmodifiableList(points);
  }

  /** The level at a time; of one that has fallen out of its curve only that it is lower. */
  private static String levelAt(Curve curve, double seconds) {
    double end = end(curve);
    String level =
        ReadableNumbers.decibels(CurveReading.at(curve, Math.min(seconds, end)).outputDb());
    return seconds > end && !endsAtFloor(curve) ? "below " + level : level;
  }

  /** A curve ends either near its floor or where it has fallen 60 dB below its top. */
  private static boolean endsAtFloor(Curve curve) {
    double top = curve.points().stream().mapToDouble(CurvePoint::outputDb).max().orElse(LOWEST_DB);
    return curve.points().get(curve.points().size() - 1).outputDb() > top - CURVE_DEPTH_DB;
  }

  private static double end(Curve curve) {
    return curve.points().get(curve.points().size() - 1).seconds();
  }
}
