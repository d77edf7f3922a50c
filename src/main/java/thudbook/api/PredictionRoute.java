package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.web.MediaTypes;

/** Predicts a sound that need not be stored. */
final class PredictionRoute {
  private final Things<Gate> gates;

  PredictionRoute(Things<Gate> gates) {
    this.gates = gates;
  }

  void addTo(JavalinConfig config) {
    config.routes.post("/api/predictions", this::predict);
  }

  private void predict(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Query query = new Query(ctx);
    boolean withCurve = query.oneOf("include", "curve") != null;
    query.refuseFaults();
    Sound sound = Documents.soundFromJson(ctx.bodyAsBytes(), gates);
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, PredictionJson.node(predict(sound, withCurve)));
  }

  static Prediction predict(Sound sound, boolean withCurve) {
    return withCurve ? Predictor.predictWithCurve(sound) : Predictor.predict(sound);
  }
}
