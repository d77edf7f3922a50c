package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.function.IntSupplier;
import thudbook.predictions.Predictor;

/** Whether the server is alive and ready, for whoever watches it. */
final class HealthRoute {
  private final IntSupplier schema;

  HealthRoute(IntSupplier schema) {
    this.schema = schema;
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/health", this::health);
  }

  private void health(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        Json.object()
            .put("alive", true)
            .put("ready", true)
            .put("schema", schema.getAsInt())
            .put("modelVersion", Predictor.MODEL_VERSION));
  }
}
