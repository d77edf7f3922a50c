package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import thudbook.web.MediaTypes;

/** The description of these routes, OpenAPI 3.1. */
final class DescriptionRoute {
  private final byte[] description;

  DescriptionRoute(byte[] description) {
    this.description = description.clone();
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/api/openapi.json", this::description);
  }

  private void description(Context ctx) {
    MediaTypes.requireAccepted(ctx, Json.MEDIA_TYPE);
    ctx.header("Cache-Control", "no-cache").contentType(Json.MEDIA_TYPE).result(description);
  }
}
