package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.equipment.GateStore;
import thudbook.library.RecipeList;
import thudbook.predictions.Metrics;
import thudbook.predictions.SmallShape;
import thudbook.predictions.Sound;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Resolution;

/** Recipes: the list, one as it was written, and what follows from it. */
final class RecipeRoutes {
  private static final int USUAL_LIMIT = 50;
  private static final int LARGEST_LIMIT = 200;

  private final RecipeStore recipes;
  private final GateStore gates;
  private final RecipeList list;

  RecipeRoutes(RecipeStore recipes, GateStore gates, RecipeList list) {
    this.recipes = recipes;
    this.gates = gates;
    this.list = list;
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/api/recipes", this::list);
    config.routes.get("/api/recipes/{id}", this::recipe);
    config.routes.get("/api/recipes/{id}/prediction", this::prediction);
    config.routes.get("/api/recipes/{id}/document", this::document);
  }

  private void list(Context ctx) {
    Query query = new Query(ctx);
    boolean byTitle = "title".equals(query.oneOf("order", "newest", "title"));
    int limit = query.whole("limit", 1, LARGEST_LIMIT, USUAL_LIMIT);
    query.refuseFaults();
    RecipeList.Page page =
        list.page(
            new RecipeList.Request(
                byTitle ? RecipeList.Order.TITLE : RecipeList.Order.NEWEST,
                query.text("tag"),
                limit,
                query.text("after")));
    ctx.header("Cache-Control", "no-store");
    ObjectNode node = Json.object();
    ArrayNode rows = node.putArray("recipes");
    page.rows().forEach(row -> rows.add(row(row)));
    Json.answer(ctx, node.put("total", page.total()).put("next", page.next()));
  }

  private static ObjectNode row(RecipeList.Row row) {
    ObjectNode node =
        Json.object()
            .put("id", row.id().toString())
            .put("slug", row.slug())
            .put("title", row.title());
    node.set("tags", Json.words(row.tags()));
    node.put("by", row.by()).put("heard", row.heard());
    node.put("changedAt", row.changedAt().toString());
    node.put("source", row.sourceKind());
    node.set("channels", Json.words(row.channels()));
    Metrics metrics = row.metrics();
    node.set("metrics", metrics == null ? null : PredictionJson.metrics(metrics));
    node.set("shape", shape(row.shape()));
    return node.put("stale", row.stale());
  }

  private static @Nullable ArrayNode shape(@Nullable SmallShape shape) {
    if (shape == null) {
      return null;
    }
    ArrayNode levels = Json.array();
    shape.levelsDb().forEach(levels::add);
    return levels;
  }

  private void recipe(Context ctx) {
    RecipeStore.Stored stored = found(ctx);
    Recipe recipe = stored.recipe();
    if (!Kept.answered(ctx, recipe.slug(), recipe.id(), stored.version(), Json.MEDIA_TYPE)) {
      Json.answer(ctx, Documents.json(recipe));
    }
  }

  private void document(Context ctx) {
    RecipeStore.Stored stored = found(ctx);
    Recipe recipe = stored.recipe();
    if (!Kept.answered(ctx, recipe.slug(), recipe.id(), stored.version(), Kept.DOCUMENT_TYPE)) {
      Kept.answerDocument(ctx, stored.document());
    }
  }

  private void prediction(Context ctx) {
    Query query = new Query(ctx);
    boolean withCurve = query.oneOf("include", "curve") != null;
    query.refuseFaults();
    Recipe recipe = found(ctx).recipe();
    if (!Kept.sentOn(ctx, recipe.slug(), recipe.id())) {
      Resolution resolution = Resolution.of(recipe, gates);
      Sound sound = resolution.complete().orElseThrow(() -> incomplete(resolution));
      ctx.header("Cache-Control", "no-store");
      Json.answer(ctx, PredictionJson.node(PredictionRoute.predict(sound, withCurve)));
    }
  }

  private static Refusal incomplete(Resolution resolution) {
    return new Refusal(
        Refusal.Kind.CONFLICT,
        resolution.missing().stream()
            .map(what -> new Fault("", 0, "missing", "", what, "no prediction yet: " + what))
            .toList());
  }

  private RecipeStore.Stored found(Context ctx) {
    return recipes.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("recipe"));
  }
}
