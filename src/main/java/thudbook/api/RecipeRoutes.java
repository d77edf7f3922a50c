package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.library.Library;
import thudbook.library.RecipeList;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.predictions.Metrics;
import thudbook.predictions.SmallShape;
import thudbook.predictions.Sound;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.web.Visitors;

/** Recipes: the list, one as it was written, what follows from it, its history, and writing. */
final class RecipeRoutes {
  private static final int USUAL_LIMIT = 50;
  private static final int LARGEST_LIMIT = 200;

  private static final String PATH = "/api/recipes";

  private final KeptRoutes<Recipe> kept;
  private final Supplier<Listening> listening;
  private final Library library;

  /**
   * Routes over these stores.
   *
   * @param kept what recipes have in common with everything that is kept
   */
  RecipeRoutes(KeptRoutes<Recipe> kept, Supplier<Listening> listening, Library library) {
    this.kept = kept;
    this.listening = listening;
    this.library = library;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.get(PATH + "/{id}/prediction", this::prediction);
    kept.addToBut(config);
  }

  private void list(Context ctx) {
    Query query = new Query(ctx);
    SearchAddress search = query.search();
    int limit = query.whole("limit", 1, LARGEST_LIMIT, USUAL_LIMIT);
    query.refuseFaults();
    Typed typed = search.wanted(library::vocabulary);
    Library.Page page =
        library.page(
            typed.wanted(),
            search.ordering(typed.wanted()),
            Visitors.of(ctx).author(),
            limit,
            query.text("after"));
    ctx.header("Cache-Control", "no-store");
    ObjectNode node = Json.object();
    ArrayNode rows = node.putArray("recipes");
    page.rows().forEach(row -> rows.add(row(row)));
    node.put("total", page.found().total()).put("next", page.found().next());
    FindingRoutes.putUnderstood(node, typed);
    Json.answer(ctx, node);
  }

  static ObjectNode row(RecipeList.Row row) {
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
    return node.put("stale", row.stale())
        .put("rating", row.rating())
        .put("favourite", row.favourite());
  }

  private static @Nullable ArrayNode shape(@Nullable SmallShape shape) {
    if (shape == null) {
      return null;
    }
    ArrayNode levels = Json.array();
    shape.levelsDb().forEach(levels::add);
    return levels;
  }

  private void prediction(Context ctx) {
    Query query = new Query(ctx);
    boolean withCurve = query.oneOf("include", "curve") != null;
    query.refuseFaults();
    Kept<Recipe> recipe = kept.found(ctx);
    if (!KeptAnswers.sentOn(ctx, recipe)) {
      HeardRecipe heard = listening.get().hear(recipe.thing());
      Sound sound = heard.sound().orElseThrow(() -> incomplete(heard.resolution()));
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          PredictionJson.node(
              withCurve ? heard.listening().drawn(sound) : heard.listening().prediction(sound)));
    }
  }

  private static Refusal incomplete(Resolution resolution) {
    return new Refusal(
        Refusal.Kind.CONFLICT,
        resolution.missing().stream()
            .map(what -> new Fault("", 0, "missing", "", what, "no prediction yet: " + what))
            .toList());
  }
}
