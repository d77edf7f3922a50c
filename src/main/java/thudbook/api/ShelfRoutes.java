package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import thudbook.documents.ShelfBody;
import thudbook.library.ShelfStore;
import thudbook.library.ShelfStore.Shelf;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/** Searches that were given a name. */
final class ShelfRoutes {
  private static final String PATH = "/api/shelves";

  private final ShelfStore shelves;
  private final InstantSource clock;

  ShelfRoutes(ShelfStore shelves, InstantSource clock) {
    this.shelves = shelves;
    this.clock = clock;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.post(PATH, this::add);
    config.routes.put(PATH + "/{id}", this::change);
    config.routes.delete(PATH + "/{id}", this::remove);
  }

  private void list(Context ctx) {
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("shelves");
    shelves.all().forEach(shelf -> list.add(json(shelf)));
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, node);
  }

  private void add(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    ShelfBody body = ShelfBody.of(ctx.bodyAsBytes());
    Shelf shelf =
        shelves.add(body.name(), body.search(), Visitors.of(ctx).author(), clock.instant());
    ctx.status(HttpStatus.CREATED).header("Location", PATH + "/" + shelf.id());
    Json.answer(ctx, json(shelf));
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    ShelfBody body = ShelfBody.of(ctx.bodyAsBytes());
    Json.answer(ctx, json(shelves.change(id(ctx), body.name(), body.search())));
  }

  private void remove(Context ctx) {
    if (!shelves.remove(id(ctx))) {
      throw KeptAnswers.notFound("shelf");
    }
    ctx.status(HttpStatus.NO_CONTENT);
  }

  private static ObjectNode json(Shelf shelf) {
    return Json.object()
        .put("id", shelf.id())
        .put("name", shelf.name())
        .put("search", shelf.search())
        .put("by", shelf.author().name())
        .put("madeAt", shelf.madeAt().toString());
  }

  private static long id(Context ctx) {
    String text = ctx.pathParam("id");
    if (!text.matches("[1-9][0-9]{0,17}")) {
      throw KeptAnswers.notFound("shelf");
    }
    return Long.parseLong(text);
  }
}
