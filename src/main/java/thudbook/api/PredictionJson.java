package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.StageMetrics;
import thudbook.predictions.StrikeMetrics;

/** Predictions as JSON, in the names and units of the model; what is absent is null. */
public final class PredictionJson {
  private PredictionJson() {}

  /** {@code {metrics, stages, strikes, curve?}}; the curve is there if the prediction has one. */
  public static ObjectNode node(Prediction prediction) {
    ObjectNode node = Json.object();
    node.set("metrics", metrics(prediction.metrics()));
    ArrayNode stages = node.putArray("stages");
    prediction.stages().forEach(stage -> stages.add(stage(stage)));
    ArrayNode strikes = node.putArray("strikes");
    prediction.strikes().forEach(strike -> strikes.add(strike(strike)));
    Curve curve = prediction.curve();
    if (curve != null) {
      node.set("curve", curve(curve));
    }
    return node;
  }

  static ObjectNode metrics(Metrics metrics) {
    ObjectNode node = Json.object();
    for (Metric metric : Metric.values()) {
      node.set(metric.key(), Json.number(metrics.values().get(metric)));
    }
    node.put("reach", word(metrics.reach()));
    node.set("envelopeOnly", Json.words(metrics.envelopeOnly().stream().map(Metric::key).toList()));
    return node;
  }

  private static ObjectNode stage(StageMetrics stage) {
    ObjectNode node = Json.object();
    set(node, Metric.DEAD_TIME, stage.deadTime());
    set(node, Metric.FLAT_TIME, stage.flatTime());
    set(node, Metric.LET_GO, stage.letGo());
    set(node, Metric.IGNORED_SHARE, stage.ignoredShare());
    set(node, Metric.PEAK_OPENNESS, stage.peakOpenness());
    node.put("reach", word(stage.reach()));
    return node;
  }

  private static void set(ObjectNode node, Metric metric, @Nullable Double value) {
    node.set(metric.key(), Json.number(value));
  }

  private static ObjectNode strike(StrikeMetrics strike) {
    ObjectNode node = Json.object();
    node.set(Metric.PEAK_DB.key(), Json.number(strike.peakDb()));
    node.put("separated", strike.separated());
    return node;
  }

  /** One array per quantity: shorter than an object per point, and ready to be drawn. */
  private static ObjectNode curve(Curve curve) {
    ObjectNode node = Json.object();
    ArrayNode time = node.putArray("time");
    ArrayNode output = node.putArray("outputDb");
    ArrayNode offset = node.putArray("offset");
    ArrayNode brightness = node.putArray("brightness");
    ArrayNode stages = node.putArray("stages");
    for (CurvePoint point : curve.points()) {
      time.add(point.seconds());
      output.add(Json.number(point.outputDb()));
      offset.add(point.offsetVolts());
      brightness.add(Json.number(point.brightnessHertz()));
    }
    int count = curve.points().isEmpty() ? 0 : curve.points().get(0).stages().size();
    for (int i = 0; i < count; i++) {
      stages.add(stage(curve, i));
    }
    node.put("worstDb", curve.worstDb());
    return node;
  }

  private static ObjectNode stage(Curve curve, int index) {
    ObjectNode node = Json.object();
    ArrayNode control = node.putArray("controlVoltage");
    ArrayNode openness = node.putArray("openness");
    ArrayNode cutoff = node.putArray("cutoff");
    for (CurvePoint point : curve.points()) {
      CurvePoint.AtStage at = point.stages().get(index);
      control.add(at.controlVolts());
      openness.add(at.openness());
      cutoff.add(Json.number(at.cutoffHertz()));
    }
    return node;
  }

  private static String word(Reach reach) {
    return reach.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
