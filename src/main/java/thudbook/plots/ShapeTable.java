package thudbook.plots;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import thudbook.drawings.Moment;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.CurvePoint.AtStage;
import thudbook.predictions.Prediction;
import thudbook.predictions.Sound;
import thudbook.wording.ReadableNumbers;

/** The curve as a table: at what happens, and at 1, 2 and 5 times powers of ten between. */
final class ShapeTable {
  /** Times below this are told only where something happens. */
  private static final int FIRST_DECADE = -3;

  private ShapeTable() {}

  static DataTable of(Prediction prediction, Sound sound, Curve curve) {
    int stages = sound.stages().size();
    List<String> header = new ArrayList<>(List.of("Time", "What happens", "Output level"));
    boolean[] filtered = new boolean[stages];
    for (int i = 0; i < stages; i++) {
      String of = stages > 1 ? " of stage " + (i + 1) : "";
      filtered[i] = sound.stages().get(i).channel().response().filter().isPresent();
      header.add("Control voltage" + of);
      header.add("Openness" + of);
      if (filtered[i]) {
        header.add("Cutoff" + of);
      }
    }
    header.add("Brightness");
    List<List<String>> rows = new ArrayList<>();
    times(prediction, sound, curve)
        .forEach(
            (seconds, event) -> {
              CurvePoint point = CurveReading.at(curve, seconds);
              List<String> row = new ArrayList<>();
              row.add(ReadableNumbers.seconds(seconds));
              row.add(event);
              row.add(ReadableNumbers.decibels(point.outputDb()));
              for (int i = 0; i < stages; i++) {
                AtStage stage = point.stages().get(i);
                row.add(ReadableNumbers.volts(stage.controlVolts()));
                row.add(ReadableNumbers.share(stage.openness()));
                if (filtered[i]) {
                  row.add(ReadableNumbers.hertz(stage.cutoffHertz()));
                }
              }
              row.add(ReadableNumbers.hertz(point.brightnessHertz()));
              rows.add(row);
            });
    return new DataTable("The shape over time", header, rows);
  }

  private static Map<Double, String> times(Prediction prediction, Sound sound, Curve curve) {
    Map<Double, String> times = new TreeMap<>();
    for (Moment event : new ShapeParts(prediction, sound, curve).events()) {
      times.merge(event.at(), event.label(), (one, other) -> one + ", " + other);
    }
    double end = curve.points().get(curve.points().size() - 1).seconds();
    for (int decade = FIRST_DECADE; decade < 2; decade++) {
      for (int digit : new int[] {1, 2, 5}) {
        double at = digit * Math.pow(10, decade);
        if (at <= end) {
          times.putIfAbsent(at, "");
        }
      }
    }
    return times;
  }
}
