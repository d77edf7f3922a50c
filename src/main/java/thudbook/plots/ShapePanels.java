package thudbook.plots;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thudbook.drawings.Axis;
import thudbook.drawings.Guide;
import thudbook.drawings.Panel;
import thudbook.drawings.Point;
import thudbook.drawings.Series;
import thudbook.envelopes.Envelope;
import thudbook.gates.Transfer;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.wording.ReadableNumbers;

/** The two panels of the large plot. */
final class ShapePanels {
  /** How far below the peak the level is drawn, in dB. */
  private static final double DEPTH_DB = 66;

  /** The look of what was there before. */
  private static final int BEFORE = 5;

  /** Levels below this are drawn as this; an infinitely low one has no place on a page. */
  private static final double LOWEST_DB = -400;

  private ShapePanels() {}

  /**
   * The output level, with its floor.
   *
   * @param before a curve that is drawn behind it; null: none
   */
  static Panel level(Prediction prediction, Curve curve, @Nullable Curve before, double from) {
    List<Series> series = new ArrayList<>();
    if (before != null) {
      series.add(new Series(levels(before, from), BEFORE, "before", false));
    }
    series.add(new Series(levels(curve, from), 1, "", true));
    double peak = all(series).mapToDouble(Point::y).max().orElse(0);
    double least = all(series).mapToDouble(Point::y).min().orElse(0);
    double high = 10 * Math.ceil((peak - 0.01) / 10) + 2;
    double low = Math.min(Math.max(least - 4, peak - DEPTH_DB), peak - 14);
    List<Guide> guides = new ArrayList<>();
    double top = prediction.metrics().get(Metric.PEAK_DB).orElse(peak);
    prediction
        .metrics()
        .get(Metric.FLOOR_DB)
        .ifPresent(
            floor -> {
              double at = Math.max(LOWEST_DB, top + floor);
              String label = "floor " + ReadableNumbers.decibels(at);
              guides.add(
                  at < low
                      ? new Guide(low, label + " ↓", Guide.Kind.REST)
                      : new Guide(at, label, Guide.Kind.REST));
            });
    return new Panel(
        Axis.linear("output level, dB", low, high, 8, ReadableNumbers::significant),
        0.62,
        series,
        guides);
  }

  private static Stream<Point> all(List<Series> series) {
    return series.stream().flatMap(line -> line.points().stream());
  }

  private static List<Point> levels(Curve curve, double from) {
    return points(curve, from, point -> Math.max(LOWEST_DB, point.outputDb()));
  }

  /**
   * The control voltage of each stage, with thresholds, ceilings and rest.
   *
   * @param before a curve that is drawn behind it; null: none
   */
  static Panel controlVoltage(Sound sound, Curve curve, @Nullable Curve before, double from) {
    List<Series> series = new ArrayList<>();
    if (before != null) {
      for (int i = 0; i < before.points().get(0).stages().size(); i++) {
        int stage = i;
        series.add(
            new Series(
                points(before, from, point -> point.stages().get(stage).controlVolts()),
                BEFORE,
                "",
                false));
      }
    }
    for (Map.Entry<List<Point>, List<Integer>> line : lines(sound, curve, from).entrySet()) {
      List<Integer> of = line.getValue();
      String label =
          sound.stages().size() == 1 ? "" : (of.size() > 1 ? "stages " : "stage ") + joined(of);
      series.add(new Series(line.getKey(), of.get(0), label, false));
    }
    List<Guide> guides = new ArrayList<>();
    List<Stage> stages = sound.stages();
    add(
        guides,
        "threshold",
        Guide.Kind.LIMIT,
        stages.size(),
        i -> knots(stages, i).thresholdVolts());
    add(guides, "ceiling", Guide.Kind.LIMIT, stages.size(), i -> knots(stages, i).ceilingVolts());
    add(guides, "rest", Guide.Kind.REST, stages.size(), i -> restVolts(sound, i));
    double low = guides.stream().mapToDouble(Guide::at).min().orElse(0);
    double high = guides.stream().mapToDouble(Guide::at).max().orElse(0);
    for (Series line : series) {
      for (Point point : line.points()) {
        low = Math.min(low, point.y());
        high = Math.max(high, point.y());
      }
    }
    double margin = 0.08 * Math.max(1, high - low);
    return new Panel(
        Axis.linear(
            "control voltage, V", low - margin, high + margin, 6, ReadableNumbers::significant),
        0.38,
        series,
        guides);
  }

  /** The lines of the stages; stages with the same control voltage share one. */
  private static Map<List<Point>, List<Integer>> lines(Sound sound, Curve curve, double from) {
    Map<List<Point>, List<Integer>> lines = new LinkedHashMap<>();
    for (int i = 0; i < sound.stages().size(); i++) {
      int stage = i;
      lines
          .computeIfAbsent(
              points(curve, from, point -> point.stages().get(stage).controlVolts()),
              key -> new ArrayList<>())
          .add(i + 1);
    }
    return lines;
  }

  /** A guide for each value, numbered only where stages differ. */
  private static void add(
      List<Guide> guides, String name, Guide.Kind kind, int stages, IntToDoubleFunction volts) {
    Map<Double, List<Integer>> values = new TreeMap<>();
    for (int i = 0; i < stages; i++) {
      values.computeIfAbsent(volts.applyAsDouble(i), key -> new ArrayList<>()).add(i + 1);
    }
    values.forEach(
        (at, of) -> {
          String which = of.size() == stages ? "" : " " + joined(of) + ":";
          guides.add(new Guide(at, name + which + " " + ReadableNumbers.volts(at), kind));
        });
  }

  private static String joined(List<Integer> stages) {
    return stages.stream().map(String::valueOf).collect(Collectors.joining("+"));
  }

  private static Transfer knots(List<Stage> stages, int stage) {
    return stages.get(stage).channel().transfer();
  }

  /** The control voltage before the first strike. */
  private static double restVolts(Sound sound, int stage) {
    double envelope =
        sound.envelopeOf(stage) instanceof Envelope.Recorded recorded
            ? recorded.samples().get(0).volts()
            : 0;
    return sound.stages().get(stage).drive().apply(envelope);
  }

  /** The points of a curve that are numbers, held back to the start of the axis. */
  private static List<Point> points(Curve curve, double from, ToDoubleFunction<CurvePoint> value) {
    List<Point> points = new ArrayList<>();
    for (CurvePoint point : curve.points()) {
      double y = value.applyAsDouble(point);
      if (Double.isFinite(y) && Double.isFinite(point.seconds())) {
        if (points.isEmpty() && point.seconds() > from) {
          points.add(new Point(from, y));
        }
        points.add(new Point(point.seconds(), y));
      }
    }
    return points;
  }
}
