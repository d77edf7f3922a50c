package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.GateStore;
import thudbook.library.Library;
import thudbook.library.RecipeList;
import thudbook.library.SearchAddress;
import thudbook.library.Typed;
import thudbook.predictions.Metrics;
import thudbook.predictions.SmallShape;
import thudbook.predictions.Sound;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.recipes.Resolution;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** Recipes: the list, one as it was written, what follows from it, its history, and writing. */
final class RecipeRoutes {
  private static final int USUAL_LIMIT = 50;
  private static final int LARGEST_LIMIT = 200;

  private static final String PATH = "/api/recipes";

  private final RecipeStore recipes;
  private final GateStore gates;
  private final Library library;
  private final Recipes acts;
  private final Identity identity;

  /**
   * Routes over these stores.
   *
   * @param identity gives ids and slugs to recipes that come without
   */
  RecipeRoutes(
      RecipeStore recipes, GateStore gates, Library library, Recipes acts, Identity identity) {
    this.recipes = recipes;
    this.gates = gates;
    this.library = library;
    this.acts = acts;
    this.identity = identity;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.post(PATH, this::create);
    config.routes.get(PATH + "/{id}", this::recipe);
    config.routes.put(PATH + "/{id}", this::change);
    config.routes.delete(PATH + "/{id}", this::bin);
    config.routes.get(PATH + "/{id}/revisions", this::revisions);
    config.routes.get(PATH + "/{id}/revisions/{number}", this::revision);
    config.routes.post(PATH + "/{id}/revisions/{number}/restore", this::restore);
    config.routes.get(PATH + "/{id}/prediction", this::prediction);
    config.routes.get(PATH + "/{id}/document", this::document);
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
            Author.OWNER,
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

  private void create(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Recipe recipe = Documents.recipeFromJson(ctx.bodyAsBytes(), identity);
    acts.create(
        new Recipes.Written(recipe, Documents.write(recipe)), Author.OWNER, "wrote it down");
    answerWritten(ctx, recipe.id());
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    RecipeStore.Stored stored = found(ctx);
    Recipe before = stored.recipe();
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Recipe recipe =
        Documents.recipeFromJson(ctx.bodyAsBytes(), new SameIdentity(before.id(), before.slug()));
    Kept.requireSame(before.id(), recipe.id());
    acts.change(
        recipe.id(),
        version,
        new Recipes.Written(recipe, Documents.write(recipe)),
        Author.OWNER,
        DifferenceWords.summary(Differences.between(before, recipe)));
    answerWritten(ctx, recipe.id());
  }

  private void bin(Context ctx) {
    RecipeStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Json.answer(ctx, HistoryJson.done(acts.bin(stored.recipe().id(), version, Author.OWNER)));
  }

  private void revisions(Context ctx) {
    HistoryJson.Wanted wanted = HistoryJson.Wanted.of(ctx);
    Recipe recipe = found(ctx).recipe();
    if (!Kept.sentOn(ctx, recipe.slug(), recipe.id())) {
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          HistoryJson.page(recipes.revisions(recipe.id(), wanted.below(), wanted.limit()), wanted));
    }
  }

  private void revision(Context ctx) {
    Revision<Recipe> revision =
        recipes
            .revision(found(ctx).recipe().id(), HistoryJson.number(ctx))
            .orElseThrow(HistoryJson::noSuchRevision);
    Json.answer(ctx, HistoryJson.revision(revision, "recipe", Documents.json(revision.noun())));
  }

  private void restore(Context ctx) {
    RecipeStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    UUID id = stored.recipe().id();
    acts.restore(id, version, HistoryJson.number(ctx), Author.OWNER, Documents::write);
    answerWritten(ctx, id);
  }

  private void answerWritten(Context ctx, UUID id) {
    RecipeStore.Stored written = recipes.find(id.toString()).orElseThrow();
    Kept.answerWritten(
        ctx, PATH, written.recipe().slug(), written.version(), Documents.json(written.recipe()));
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
    RecipeStore.Stored stored =
        recipes.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("recipe"));
    if (stored.binnedAt() != null) {
      throw Kept.inBin(stored.recipe().title());
    }
    return stored;
  }
}
