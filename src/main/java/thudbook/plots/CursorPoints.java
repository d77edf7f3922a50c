package thudbook.plots;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.StringJoiner;
import java.util.function.ToDoubleFunction;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;

/**
 * The points that the cursor of the large plot reads, as JSON: lists of equal length, values that
 * do not exist as null. Thinned so that straight lines stay within what a read-out shows.
 */
final class CursorPoints {
  /** Enough for what is shown, which is three digits. */
  private static final int DIGITS = 4;

  /** Times keep what a strike late in a train needs to be told apart from its neighbours. */
  private static final int TIME_DIGITS = 7;

  /** Numbers of this size are read as zero, whatever their unit. */
  private static final double NOTHING = 1e-15;

  /** Long trains are told more roughly rather than with more points than this. */
  private static final int MOST = 600;

  private CursorPoints() {}

  /** JSON of numbers only, so that nothing in it can end the element that it stands in. */
  static String json(Curve curve) {
    double tolerance = 1;
    List<CurvePoint> points = thinned(curve.points(), tolerance);
    while (points.size() > MOST && tolerance < 100) {
      tolerance *= 2;
      points = thinned(curve.points(), tolerance);
    }
    return json(points);
  }

  private static String json(List<CurvePoint> points) {
    StringJoiner stages = new StringJoiner(",");
    for (int i = 0; i < points.get(0).stages().size(); i++) {
      int stage = i;
      stages.add(
          "{\"volts\":"
              + list(points, point -> point.stages().get(stage).controlVolts())
              + ",\"openness\":"
              + list(points, point -> point.stages().get(stage).openness())
              + ",\"cutoff\":"
              + list(points, point -> point.stages().get(stage).cutoffHertz())
              + "}");
    }
    return "{\"seconds\":"
        + list(points, CurvePoint::seconds, TIME_DIGITS)
        + ",\"level\":"
        + list(points, CurvePoint::outputDb)
        + ",\"brightness\":"
        + list(points, CurvePoint::brightnessHertz)
        + ",\"stages\":["
        + stages
        + "]}";
  }

  private static String list(List<CurvePoint> points, ToDoubleFunction<CurvePoint> value) {
    return list(points, value, DIGITS);
  }

  private static String list(
      List<CurvePoint> points, ToDoubleFunction<CurvePoint> value, int digits) {
    StringJoiner list = new StringJoiner(",", "[", "]");
    for (CurvePoint point : points) {
      list.add(number(value.applyAsDouble(point), digits));
    }
    return list.toString();
  }

  /** Through whole numbers: exact decimals of doubles have dozens of digits to be rounded. */
  private static String number(double value, int digits) {
    if (!Double.isFinite(value)) {
      return "null";
    }
    if (Math.abs(value) < NOTHING) {
      return "0";
    }
    int places = digits - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
    double whole = Math.rint(places < 0 ? value / power(-places) : value * power(places));
    return BigDecimal.valueOf((long) whole, places).stripTrailingZeros().toString();
  }

  private static double power(int places) {
    return Math.pow(10, places);
  }

  /** As few points as keep every value within so many steps of reading (Ramer's method). */
  private static List<CurvePoint> thinned(List<CurvePoint> points, double tolerance) {
    BitSet kept = new BitSet(points.size());
    kept.set(0);
    kept.set(points.size() - 1);
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, points.size() - 1});
    while (!open.isEmpty()) {
      int[] span = open.pop();
      int farthest = -1;
      double most = tolerance;
      Curve chord = new Curve(List.of(points.get(span[0]), points.get(span[1])), 0);
      for (int i = span[0] + 1; i < span[1]; i++) {
        double steps = steps(points.get(i), CurveReading.at(chord, points.get(i).seconds()));
        if (steps > most) {
          most = steps;
          farthest = i;
        }
      }
      if (farthest >= 0) {
        kept.set(farthest);
        open.push(new int[] {span[0], farthest});
        open.push(new int[] {farthest, span[1]});
      }
    }
    List<CurvePoint> thin = new ArrayList<>();
    kept.stream().forEach(i -> thin.add(points.get(i)));
    return thin;
  }

  /** How far apart two states are: 1 is 0.1 dB, 20 mV, 0.2 % of openness or 1 % of a frequency. */
  private static double steps(CurvePoint a, CurvePoint b) {
    double most = difference(a.outputDb(), b.outputDb()) / 0.1;
    most = Math.max(most, ratio(a.brightnessHertz(), b.brightnessHertz()) / 0.01);
    for (int i = 0; i < a.stages().size(); i++) {
      CurvePoint.AtStage p = a.stages().get(i);
      CurvePoint.AtStage q = b.stages().get(i);
      most = Math.max(most, difference(p.controlVolts(), q.controlVolts()) / 0.02);
      most = Math.max(most, difference(p.openness(), q.openness()) / 0.002);
      most = Math.max(most, ratio(p.cutoffHertz(), q.cutoffHertz()) / 0.01);
    }
    return most;
  }

  private static double difference(double a, double b) {
    return a == b ? 0 : Math.abs(a - b);
  }

  private static double ratio(double a, double b) {
    return a == b || a <= 0 || b <= 0 ? 0 : Math.abs(Math.log(a / b));
  }
}
