package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.stream.Collectors;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;

/** The studio's gates: all of them, and one as it was written. */
final class GateRoutes {
  private final GateStore gates;

  GateRoutes(GateStore gates) {
    this.gates = gates;
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/api/gates", this::list);
    config.routes.get("/api/gates/{id}", this::gate);
    config.routes.get("/api/gates/{id}/document", this::document);
  }

  private void list(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        gates.all().stream()
            .map(stored -> Documents.json(stored.gate()))
            .collect(Collectors.joining(",", "{\"gates\":[", "]}")));
  }

  private void gate(Context ctx) {
    GateStore.Stored stored = found(ctx);
    Gate gate = stored.gate();
    if (!Kept.answered(ctx, gate.slug(), gate.id(), stored.version(), Json.MEDIA_TYPE)) {
      Json.answer(ctx, Documents.json(gate));
    }
  }

  private void document(Context ctx) {
    GateStore.Stored stored = found(ctx);
    Gate gate = stored.gate();
    if (!Kept.answered(ctx, gate.slug(), gate.id(), stored.version(), Kept.DOCUMENT_TYPE)) {
      Kept.answerDocument(ctx, stored.document());
    }
  }

  private GateStore.Stored found(Context ctx) {
    return gates.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("gate"));
  }
}
