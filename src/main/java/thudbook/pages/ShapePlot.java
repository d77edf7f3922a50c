package thudbook.pages;

import java.util.List;
import thudbook.drawings.Axis;
import thudbook.drawings.Format;
import thudbook.drawings.Panel;
import thudbook.drawings.Plot;
import thudbook.drawings.PlotDrawing;
import thudbook.drawings.Scale;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;

/**
 * The large plot of a recipe: output level in dB and the control voltage on one time axis, with the
 * parts of the strike in a band above.
 *
 * <p>The time axis of a lone strike is even for the first millisecond and then gives every doubling
 * the same width, as asinh(t / 1 ms): a dead time of 0.3 ms, an attack of 2 ms, a hold of 5 ms and
 * a tail of 2 s can all be read from it, and it has an origin, which a logarithmic axis lacks. On a
 * linear axis of 2 s the whole attack and hold of most strikes are narrower than a finger. (A
 * square root was tried as well: attack and hold get about a tenth of the width, too little for
 * labels.) Trains of strikes and recorded control voltages have a linear axis, because rhythm is
 * read from even distances, and what happens in them is not gathered at the start.
 */
public final class ShapePlot {
  /** Up to about this time, in seconds, the axis of a lone strike is even. */
  private static final double BEND_SECONDS = 0.001;

  /** Share of the width before the strike. */
  private static final double BEFORE = 0.012;

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
   * @param prediction with its curve
   * @return safe HTML
   */
  public static String figure(Prediction prediction, Sound sound) {
    return "<figure class=\"plot-figure\" data-plot-cursor><div class=\"plot-frame-box\">"
        + svg(prediction, sound, Width.WIDE)
        + svg(prediction, sound, Width.NARROW)
        + "</div><p class=\"plot-readout\" aria-live=\"polite\"></p>"
        + "<script type=\"application/json\">"
        + CursorPoints.json(curve(prediction))
        + "</script></figure>";
  }

  /**
   * All figures of a sound: of one strike from rest, with its parts; of a train then also as it is
   * struck.
   *
   * @param prediction with its curve
   */
  public static List<Figure> figures(Prediction prediction, Sound sound) {
    if (train(sound).isEmpty()) {
      return List.of(new Figure("", figure(prediction, sound), table(prediction, sound)));
    }
    Sound lone =
        new Sound(sound.source(), sound.envelope(), null, sound.stages(), sound.couplingHertz());
    Prediction one = Predictor.predictWithCurve(lone);
    return List.of(
        new Figure("One strike from rest", figure(one, lone), table(one, lone)),
        new Figure(
            train(sound).size() + " strikes", figure(prediction, sound), table(prediction, sound)));
  }

  /**
   * A figure and its numbers.
   *
   * @param caption empty where there is only one
   * @param html safe
   */
  public record Figure(String caption, String html, DataTable table) {}

  /**
   * The plot alone.
   *
   * @param prediction with its curve
   * @return safe SVG
   */
  public static String svg(Prediction prediction, Sound sound, Width width) {
    Curve curve = curve(prediction);
    boolean narrow = width == Width.NARROW;
    ShapeParts parts = new ShapeParts(prediction, sound, curve);
    Axis time = time(sound, curve, narrow);
    double from = time.scale().from();
    List<Panel> panels =
        List.of(
            ShapePanels.level(prediction, curve, from),
            ShapePanels.controlVoltage(sound, curve, from));
    Plot plot =
        new Plot(
            "Predicted shape",
            ShapeWords.of(prediction, sound),
            time,
            panels,
            parts.parts(),
            parts.moments(),
            train(sound));
    return PlotDrawing.svg(plot, narrow ? Format.NARROW : Format.WIDE);
  }

  /**
   * The numbers of the plot.
   *
   * @param prediction with its curve
   */
  public static DataTable table(Prediction prediction, Sound sound) {
    return ShapeTable.of(prediction, sound, curve(prediction));
  }

  /** The times of a train in seconds; empty for one strike. */
  static List<Double> train(Sound sound) {
    Strikes strikes = sound.strikes();
    return strikes == null || strikes.seconds().size() < 2 ? List.of() : strikes.seconds();
  }

  private static Axis time(Sound sound, Curve curve, boolean narrow) {
    List<CurvePoint> points = curve.points();
    double end = Math.max(points.get(points.size() - 1).seconds(), 2 * BEND_SECONDS);
    if (isEven(sound)) {
      boolean seconds = end >= 2;
      return Axis.linear(
          seconds ? "time after the first strike, s" : "time after the first strike, ms",
          -BEFORE * end,
          end,
          narrow ? 6 : 12,
          at -> ReadableNumbers.significant(seconds ? at : at * 1000));
    }
    double whole = arsinh(end / BEND_SECONDS);
    double from = -BEND_SECONDS * Math.sinh(BEFORE * whole);
    return Axis.bent(
        "time after the strike, ms",
        new Scale(from, end, BEND_SECONDS),
        0.0005,
        at ->
            at < 0.9995
                ? ReadableNumbers.significant(at * 1000)
                : ReadableNumbers.significant(at) + "\u00a0s");
  }

  private static boolean isEven(Sound sound) {
    return !train(sound).isEmpty() || sound.envelope() instanceof Envelope.Recorded;
  }

  private static double arsinh(double value) {
    return Math.log(value + Math.sqrt(value * value + 1));
  }

  private static Curve curve(Prediction prediction) {
    Curve curve = prediction.curve();
    if (curve == null || curve.points().isEmpty()) {
      throw new IllegalArgumentException("a prediction with its curve was expected");
    }
    return curve;
  }
}
