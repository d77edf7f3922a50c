package thudbook.plots;

import java.util.ArrayList;
import java.util.List;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.CurvePoint.AtStage;

/** Reads a curve between its points, along the straight lines that it is made of. */
final class CurveReading {
  private CurveReading() {}

  /** The curve at a time; at a jump the value after it, outside its ends the end. */
  static CurvePoint at(Curve curve, double seconds) {
    List<CurvePoint> points = curve.points();
    int after = 0;
    while (after < points.size() && points.get(after).seconds() <= seconds) {
      after++;
    }
    if (after == 0) {
      return points.get(0);
    }
    CurvePoint a = points.get(after - 1);
    if (after == points.size()) {
      return a;
    }
    CurvePoint b = points.get(after);
    double along = (seconds - a.seconds()) / (b.seconds() - a.seconds());
    List<AtStage> stages = new ArrayList<>();
    for (int i = 0; i < a.stages().size(); i++) {
      AtStage p = a.stages().get(i);
      AtStage q = b.stages().get(i);
      stages.add(
          new AtStage(
              between(p.controlVolts(), q.controlVolts(), along),
              between(p.openness(), q.openness(), along),
              between(p.cutoffHertz(), q.cutoffHertz(), along)));
    }
    return new CurvePoint(
        seconds,
        between(a.outputDb(), b.outputDb(), along),
        between(a.offsetVolts(), b.offsetVolts(), along),
        between(a.brightnessHertz(), b.brightnessHertz(), along),
        stages);
  }

  private static double between(double a, double b, double along) {
    // Infinite is met where a stage has no filter; infinity minus infinity is no number.
    return a == b ? a : a + along * (b - a);
  }
}
