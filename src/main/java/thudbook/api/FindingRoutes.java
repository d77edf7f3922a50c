package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import thudbook.changes.Kept;
import thudbook.documents.TagBody;
import thudbook.library.Alike;
import thudbook.library.Counts;
import thudbook.library.Facet;
import thudbook.library.Library;
import thudbook.library.Likeness;
import thudbook.library.MarkStore;
import thudbook.library.Quantity;
import thudbook.library.RecipeList;
import thudbook.library.Tagging;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/** Counts beside a search, likeness, tags and favourites. */
final class FindingRoutes {
  private static final int USUAL_LIMIT = 20;
  private static final int LARGEST_LIMIT = 200;
  private static final String USUAL_HISTOGRAMS = "hold,release40,peakDb,thumpPeak";

  private final Library library;
  private final RecipeStore recipes;
  private final Tagging tagging;
  private final MarkStore marks;

  FindingRoutes(Library library, RecipeStore recipes, Tagging tagging, MarkStore marks) {
    this.library = library;
    this.recipes = recipes;
    this.tagging = tagging;
    this.marks = marks;
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/api/facets", this::facets);
    config.routes.get("/api/recipes/{id}/alike", this::alike);
    config.routes.put("/api/recipes/{id}/favourite", ctx -> favourite(ctx, true));
    config.routes.delete("/api/recipes/{id}/favourite", ctx -> favourite(ctx, false));
    config.routes.get("/api/tags", this::tags);
    config.routes.put("/api/tags/{name}", this::rename);
    config.routes.delete("/api/tags/{name}", this::delete);
  }

  /** What was understood of a typed search. */
  static void putUnderstood(ObjectNode node, Typed typed) {
    node.set("understood", Json.words(typed.understood()));
    ArrayNode notes = node.putArray("notes");
    typed
        .notes()
        .forEach(
            note ->
                notes.add(Json.object().put("found", note.found()).put("message", note.message())));
  }

  private void facets(Context ctx) {
    Query query = new Query(ctx);
    SearchAddress search = query.search();
    String asked = query.text("histograms");
    List<Quantity> quantities = new ArrayList<>();
    for (String key : (asked == null ? USUAL_HISTOGRAMS : asked).split(",", -1)) {
      if (!key.isBlank()) {
        Quantity.ofKey(key.strip())
            .ifPresentOrElse(
                quantities::add,
                () -> query.refuse("histograms", "unknown-word", key, "names of numbers"));
      }
    }
    query.refuseFaults();
    Typed typed = search.wanted(library::vocabulary);
    Counts counts = library.search().counts(typed.wanted(), Visitors.of(ctx).author(), quantities);
    ObjectNode node = Json.object().put("total", counts.total());
    ObjectNode facets = node.putObject("facets");
    counts.values().forEach((facet, values) -> facets.set(facet.key(), values(values)));
    ObjectNode flags = node.putObject("flags");
    counts.flags().forEach((flag, recipes) -> flags.put(flag.key(), recipes));
    ObjectNode histograms = node.putObject("histograms");
    counts
        .histograms()
        .forEach(
            (quantity, bars) ->
                histograms.set(
                    quantity.key(),
                    Json.object()
                        .put("from", quantity.bins().from())
                        .put("to", quantity.bins().to())
                        .put("logarithmic", quantity.bins().logarithmic())
                        .set("recipes", bars(bars))));
    putUnderstood(node, typed);
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, node);
  }

  private static ArrayNode values(List<Counts.Value> values) {
    ArrayNode list = Json.array();
    values.forEach(
        value ->
            list.add(
                Json.object()
                    .put("value", value.key())
                    .put("label", value.label())
                    .put("recipes", value.recipes())));
    return list;
  }

  private static ArrayNode bars(List<Integer> bars) {
    ArrayNode list = Json.array();
    bars.forEach(list::add);
    return list;
  }

  private void alike(Context ctx) {
    Query query = new Query(ctx);
    String by = query.oneOf("by", "shape", "settings", "both");
    int limit = query.whole("limit", 1, LARGEST_LIMIT, USUAL_LIMIT);
    query.refuseFaults();
    Kept<Recipe> stored = found(ctx);
    Likeness likeness = by == null ? Likeness.SHAPE : Likeness.valueOf(by.toUpperCase(Locale.ROOT));
    OptionalInt key = library.list().key(stored.thing().id());
    List<Alike.Neighbour> nearest =
        key.isEmpty() ? List.of() : library.alike().nearest(key.getAsInt(), likeness, limit);
    Map<Integer, RecipeList.Row> rows = new HashMap<>();
    library
        .list()
        .rows(nearest.stream().map(Alike.Neighbour::key).toList(), Visitors.of(ctx).author())
        .forEach(row -> rows.put(row.key(), row));
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("recipes");
    for (Alike.Neighbour neighbour : nearest) {
      RecipeList.Row row = rows.get(neighbour.key());
      if (row != null) {
        list.add(RecipeRoutes.row(row).put("distance", neighbour.distance()));
      }
    }
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, node);
  }

  private void favourite(Context ctx, boolean favourite) {
    Kept<Recipe> stored = found(ctx);
    marks.favourite(stored.thing().id(), Visitors.of(ctx).author(), favourite);
    Json.answer(ctx, Json.object().put("favourite", favourite));
  }

  private void tags(Context ctx) {
    Counts counts = library.search().counts(Wanted.ALL, Visitors.of(ctx).author(), List.of());
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx, Json.object().set("tags", values(counts.values().getOrDefault(Facet.TAG, List.of()))));
  }

  private void rename(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    done(
        ctx,
        tagging.rename(
            ctx.pathParam("name"), TagBody.of(ctx.bodyAsBytes()), Visitors.of(ctx).author()));
  }

  private void delete(Context ctx) {
    done(ctx, tagging.delete(ctx.pathParam("name"), Visitors.of(ctx).author()));
  }

  private static void done(Context ctx, OptionalLong change) {
    long id = change.orElseThrow(() -> KeptAnswers.notFound("tag"));
    ctx.status(HttpStatus.CREATED).header("Location", "/api/changes/" + id);
    Json.answer(ctx, HistoryJson.done(id));
  }

  private Kept<Recipe> found(Context ctx) {
    Kept<Recipe> stored =
        recipes.find(ctx.pathParam("id")).orElseThrow(() -> KeptAnswers.notFound("recipe"));
    if (stored.binnedAt() != null) {
      throw KeptAnswers.inBin(stored.thing().title());
    }
    return stored;
  }
}
