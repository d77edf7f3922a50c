package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import thudbook.access.Author;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.documents.BulkBody;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.library.Library;
import thudbook.library.Tagging;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.Recipe;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/**
 * What was done, undoing it, what is done to many recipes at once, the bin, and work that goes on.
 */
final class ChangeRoutes {
  private static final int USUAL_LIMIT = 50;
  private static final int LARGEST_LIMIT = 200;

  /** So many recipes of the bin are listed; of all else there are few. */
  private static final int MOST_RECIPES_IN_BIN = 1000;

  private final List<NounDocument<?>> binned;
  private final PredictionStore predictions;
  private final Keeper<Recipe> recipes;
  private final Changes changes;
  private final Library library;
  private final Tagging tagging;

  ChangeRoutes(Stores stores, Acts acts) {
    // The description of these routes has no modules in the bin.
    this.binned = acts.nouns().stream().filter(noun -> noun != Documents.MODULE).toList();
    this.predictions = stores.predictions();
    this.recipes = acts.recipes();
    this.changes = acts.changes();
    this.library = stores.library();
    this.tagging = acts.tagging();
  }

  public void addTo(JavalinConfig config) {
    config.routes.get("/api/changes", this::list);
    config.routes.post("/api/changes", this::bulk);
    config.routes.get("/api/changes/{id}", this::change);
    config.routes.post("/api/changes/{id}/undo", this::undo);
    config.routes.get("/api/bin", this::bin);
    config.routes.get("/api/jobs/{id}", this::job);
  }

  private void list(Context ctx) {
    Query query = new Query(ctx);
    int limit = query.whole("limit", 1, LARGEST_LIMIT, USUAL_LIMIT);
    query.refuseFaults();
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("changes");
    changes.newest(limit).forEach(change -> list.add(HistoryJson.change(change)));
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, node);
  }

  private void change(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        HistoryJson.change(
            changes.find(id(ctx)).orElseThrow(() -> KeptAnswers.notFound("change"))));
  }

  private void undo(Context ctx) {
    long change = changes.undo(id(ctx), Visitors.of(ctx).author());
    ctx.status(HttpStatus.CREATED).header("Location", "/api/changes/" + change);
    Json.answer(ctx, HistoryJson.done(change));
  }

  private void bulk(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    BulkBody body = BulkBody.of(ctx.bodyAsBytes());
    Author by = Visitors.of(ctx).author();
    List<UUID> ids = body.search() == null ? meant(body.recipes()) : found(body.search(), by);
    long change =
        switch (body.act()) {
          case BIN -> recipes.bin(ids, by);
          case RESTORE -> recipes.unbin(ids, by);
          case TAG ->
              tagging
                  .tag(ids, body.add(), body.remove(), by)
                  .orElseThrow(
                      () ->
                          Refusal.of(
                              Refusal.Kind.CONFLICT,
                              "nothing-to-do",
                              "All of them have these tags already."));
        };
    ctx.status(HttpStatus.CREATED).header("Location", "/api/changes/" + change);
    Json.answer(ctx, HistoryJson.done(change));
  }

  private List<UUID> meant(List<String> names) {
    Set<UUID> meant = new LinkedHashSet<>();
    List<Fault> faults = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      Kept<Recipe> stored = recipes.store().find(name).orElse(null);
      if (stored == null) {
        faults.add(
            new Fault(
                "/recipes/" + i,
                0,
                "no-such-recipe",
                name,
                "a slug or id",
                "There is no recipe " + name + "."));
      } else {
        meant.add(stored.thing().id());
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return List.copyOf(meant);
  }

  private static Fault misunderstood(String found, String message) {
    String shown = found.length() > 40 ? found.substring(0, 40) + "…" : found;
    return new Fault("/search", 0, "not-understood", shown, "the query of an address", message);
  }

  /** All recipes that a search finds. */
  private List<UUID> found(String search, Author by) {
    SearchAddress.Read read = SearchAddress.ofQuery(search);
    Typed typed = read.address().wanted(library::vocabulary);
    List<Fault> faults = new ArrayList<>(read.faults());
    // What is passed over would make the act one on more recipes than were meant.
    for (String part : SearchAddress.saysNothing(search)) {
      faults.add(misunderstood(part, "“" + part + "” says nothing about a search."));
    }
    typed.notes().forEach(note -> faults.add(misunderstood(note.found(), note.message())));
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    Wanted wanted = typed.wanted();
    List<UUID> ids = library.list().ids(library.search().all(wanted, by));
    if (ids.isEmpty()) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "nothing-to-do", "The search finds no recipe.");
    }
    return ids;
  }

  private void bin(Context ctx) {
    ObjectNode node = Json.object();
    for (NounDocument<?> noun : binned) {
      ArrayNode list = node.putArray(noun.word() + "s");
      int most = noun == Documents.RECIPE ? MOST_RECIPES_IN_BIN : Integer.MAX_VALUE;
      for (Kept<?> kept : changes.store(noun).binned(most)) {
        list.addObject()
            .put("id", kept.id().toString())
            .put("slug", kept.slug())
            .put("title", kept.title())
            .put("binnedAt", String.valueOf(kept.binnedAt()));
      }
    }
    ctx.header("Cache-Control", "no-store");
    Json.answer(ctx, node);
  }

  /** The predictions that a change of a gate has set going; its number is that of the change. */
  private void job(Context ctx) {
    long id = id(ctx);
    PredictionStore.Progress progress =
        predictions.progress(id).orElseThrow(() -> KeptAnswers.notFound("job"));
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        Json.object()
            .put("id", id)
            .put("kind", "predictions")
            .put("recipes", progress.recipes())
            .put("done", progress.recipes() - progress.waiting())
            .put("finished", progress.waiting() == 0));
  }

  private static long id(Context ctx) {
    String text = ctx.pathParam("id");
    if (!text.matches("[1-9][0-9]{0,17}")) {
      throw KeptAnswers.notFound("change");
    }
    return Long.parseLong(text);
  }
}
