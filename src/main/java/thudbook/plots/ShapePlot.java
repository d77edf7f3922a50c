package thudbook.plots;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.drawings.Axis;
import thudbook.drawings.Format;
import thudbook.drawings.Panel;
import thudbook.drawings.Plot;
import thudbook.drawings.PlotDrawing;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.predictions.Curve;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.wording.ReadableNumbers;

/**
 * The large plot of a recipe: output level in dB and the control voltage on one time axis, with the
 * parts of the strike in a band above.
 *
 * <p>A lone strike has the time axis of {@link StrikeTime}. Trains of strikes and recorded control
 * voltages have a linear axis, because rhythm is read from even distances, and what happens in them
 * is not gathered at the start.
 */
public final class ShapePlot {
  /** An axis is never shorter than this. */
  private static final double LEAST_SECONDS = 0.002;

  /** Share of the width before the strike. */
  private static final double BEFORE = 0.012;

  private ShapePlot() {}

  /** A whole page wide, or as wide as a phone. */
  public static final List<Format> ON_A_PAGE = List.of(Format.WIDE, Format.NARROW);

  /** Beside a form, or as wide as a phone. */
  public static final List<Format> BESIDE_A_FORM = List.of(Format.BESIDE, Format.NARROW);

  /**
   * What a sound was before, drawn behind it.
   *
   * @param prediction with its curve
   * @param lone the same of one strike from rest
   */
  public record Earlier(Sound sound, Prediction prediction, Prediction lone) {
    /** Predicts it. */
    public static Earlier of(Sound sound) {
      Prediction prediction = Predictor.predictWithCurve(sound);
      return new Earlier(
          sound,
          prediction,
          sound.strikes() == null ? prediction : Predictor.predictWithCurve(sound.struckOnce()));
    }
  }

  /**
   * The whole figure: all widths of the plot (the style sheet shows one), the points of the cursor
   * and the region that reads them out.
   *
   * @param prediction with its curve
   * @return safe HTML
   */
  private static String figure(
      Prediction prediction, Sound sound, @Nullable Curve before, List<Format> widths) {
    return "<figure class=\"plot-figure\" data-plot-cursor><div class=\"plot-frame-box\">"
        + widths.stream()
            .map(format -> svg(prediction, sound, before, format))
            .collect(Collectors.joining())
        + "</div><p class=\"plot-readout\" aria-live=\"polite\"></p>"
        + "<script type=\"application/json\">"
        + CursorPoints.json(curve(prediction))
        + "</script></figure>";
  }

  /**
   * All figures of a sound: of one strike from rest, with its parts; of a train then also as it is
   * struck.
   *
   * @param drawn predicts a sound with its curve
   * @param earlier what is drawn behind; null: nothing
   * @param widths one drawing each
   */
  public static List<Figure> figures(
      Sound sound,
      Function<Sound, Prediction> drawn,
      @Nullable Earlier earlier,
      List<Format> widths) {
    Prediction prediction = drawn.apply(sound);
    Curve before = earlier == null ? null : curve(earlier.lone());
    if (train(sound).isEmpty()) {
      return List.of(
          new Figure("", figure(prediction, sound, before, widths), table(prediction, sound)));
    }
    Sound lone = sound.struckOnce();
    Prediction one = drawn.apply(lone);
    Curve trainBefore =
        earlier == null || train(earlier.sound()).isEmpty() ? null : curve(earlier.prediction());
    return List.of(
        new Figure("One strike from rest", figure(one, lone, before, widths), table(one, lone)),
        new Figure(
            train(sound).size() + " strikes",
            figure(prediction, sound, trainBefore, widths),
            table(prediction, sound)));
  }

  /**
   * The figure of one strike from rest, as it stands on a page.
   *
   * @param drawn predicts a sound with its curve
   */
  public static Figure ofOneStrike(Sound sound, Function<Sound, Prediction> drawn) {
    Sound lone = train(sound).isEmpty() ? sound : sound.struckOnce();
    Prediction one = drawn.apply(lone);
    String caption = train(sound).isEmpty() ? "" : "One strike from rest";
    return new Figure(caption, figure(one, lone, null, ON_A_PAGE), table(one, lone));
  }

  /**
   * A figure and its numbers.
   *
   * @param caption empty where there is only one
   * @param html safe
   */
  public record Figure(String caption, String html, DataTable table) {}

  /** The plot alone, as safe SVG. */
  private static String svg(
      Prediction prediction, Sound sound, @Nullable Curve before, Format format) {
    Curve curve = curve(prediction);
    ShapeParts parts = new ShapeParts(prediction, sound, curve);
    double end = before == null ? end(curve) : Math.max(end(curve), end(before));
    Axis time = time(sound, end, format.equals(Format.NARROW));
    double from = time.scale().from();
    List<Panel> panels =
        List.of(
            ShapePanels.level(prediction, curve, before, from),
            ShapePanels.controlVoltage(sound, curve, before, from));
    Plot plot =
        new Plot(
            "Predicted shape",
            ShapeWords.of(prediction, sound),
            time,
            panels,
            parts.parts(),
            parts.moments(),
            train(sound));
    return PlotDrawing.svg(plot, format);
  }

  /**
   * The numbers of the plot.
   *
   * @param prediction with its curve
   */
  private static DataTable table(Prediction prediction, Sound sound) {
    return ShapeTable.of(prediction, sound, curve(prediction));
  }

  /** The times of a train in seconds; empty for one strike. */
  static List<Double> train(Sound sound) {
    Strikes strikes = sound.strikes();
    return strikes == null || strikes.seconds().size() < 2 ? List.of() : strikes.seconds();
  }

  private static double end(Curve curve) {
    return curve.points().get(curve.points().size() - 1).seconds();
  }

  private static Axis time(Sound sound, double last, boolean narrow) {
    double end = Math.max(last, LEAST_SECONDS);
    if (isEven(sound)) {
      boolean seconds = end >= 2;
      return Axis.linear(
          seconds ? "time after the first strike, s" : "time after the first strike, ms",
          -BEFORE * end,
          end,
          narrow ? 6 : 12,
          at -> ReadableNumbers.significant(seconds ? at : at * 1000));
    }
    return StrikeTime.axis(last);
  }

  private static boolean isEven(Sound sound) {
    return !train(sound).isEmpty() || sound.envelope() instanceof Envelope.Recorded;
  }

  private static Curve curve(Prediction prediction) {
    Curve curve = prediction.curve();
    if (curve == null || curve.points().isEmpty()) {
      throw new IllegalArgumentException("a prediction with its curve was expected");
    }
    return curve;
  }
}
