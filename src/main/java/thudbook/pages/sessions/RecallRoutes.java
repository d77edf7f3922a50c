package thudbook.pages.sessions;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.equipment.Rack;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.pages.reading.PhotoView;
import thudbook.pages.reading.Uses;
import thudbook.patching.DialledSettings;
import thudbook.quantities.Fault;
import thudbook.quantities.Position;
import thudbook.quantities.Refusal;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.Plan;
import thudbook.sessions.Recall;
import thudbook.sessions.RecallStore;
import thudbook.sessions.Session;
import thudbook.web.ErrorKind;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/** Recall sheets: one recipe to tick off, all sheets of a session, and what is done at the end. */
public final class RecallRoutes {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final int MOST_BYTES = 256 * 1024;
  private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
  private static final String AS_SET = "set.";

  private final Layout layout;
  private final Stores stores;
  private final RecipeStore recipes;
  private final Keeper<Recipe> acts;
  private final Store<Session> sessions;
  private final RecallStore recalls;
  private final InstantSource clock;
  private final Supplier<UUID> ids;
  private final @Nullable URI base;

  /**
   * Pages over these stores.
   *
   * @param clock tells when something was begun and finished
   * @param ids names what is begun
   * @param base where other devices reach the notebook; null: nowhere
   */
  public RecallRoutes(
      Layout layout,
      Stores stores,
      Acts acts,
      InstantSource clock,
      Supplier<UUID> ids,
      @Nullable URI base) {
    this.layout = layout;
    this.stores = stores;
    this.recipes = stores.recipes();
    this.acts = acts.recipes();
    this.sessions = stores.sessions();
    this.recalls = stores.recalls();
    this.clock = clock;
    this.ids = ids;
    this.base = base;
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/recipes/{slug}/recall", this::sheet)
        .post("/recipes/{slug}/recall", this::finish)
        .put("/recalls/{id}", this::keep)
        .get("/sessions/{slug}/sheets", this::sheets);
  }

  private void sheet(Context ctx) {
    Kept<Recipe> stored = standing(ctx);
    Recipe recipe = stored.thing();
    Session session = session(ctx.queryParam("session"));
    Optional<Recall> begun =
        recalls.unfinished(
            recipe.id(), session == null ? null : session.id(), Visitors.of(ctx).author());
    RecallMarks marks =
        begun.map(recall -> RecallMarks.read(recall.marks())).orElse(RecallMarks.NONE);
    UUID id = begun.map(Recall::id).orElseGet(ids);
    long step = begun.map(Recall::step).orElse(0L);
    show(ctx, stored, session, new Ticking(id, step, marks), List.of());
  }

  /**
   * A sheet that is being ticked off.
   *
   * @param step rises with every tick
   */
  private record Ticking(UUID id, long step, RecallMarks marks) {}

  private void show(
      Context ctx,
      Kept<Recipe> stored,
      @Nullable Session session,
      Ticking ticking,
      List<Fault> faults) {
    RecallSheet sheet = sheet(stored, ticking.marks(), stores.listening());
    Map<String, @Nullable Object> values = new HashMap<>();
    values.put("sheet", sheet);
    values.put("id", ticking.id().toString());
    values.put("step", ticking.step());
    values.put("session", session);
    values.put("faults", faults.stream().map(Fault::message).toList());
    layout.show(
        ctx, "sessions/recall", sheet.recipe().title() + ", recall", Frame.Section.RECIPES, values);
  }

  private RecallSheet sheet(Kept<Recipe> stored, RecallMarks marks, Listening listening) {
    Recipe recipe = stored.thing();
    return RecallSheet.of(
        stored,
        listening.hear(recipe),
        Rack.of(stores.modules()),
        PhotoView.all(recipe, stores.photos()),
        SheetCode.of(recipe.id(), recipe.slug(), base),
        marks,
        new Uses(recalls).last(recipe));
  }

  /** All sheets of a session, each once, behind its order and moves. */
  private void sheets(Context ctx) {
    Kept<Session> stored =
        sessions
            .find(ctx.pathParam("slug"))
            .orElseThrow(() -> Requested.notFound("The notebook has no session of this name."));
    Plan plan =
        Plan.of(
            stored.thing(),
            slug -> Uses.standing(recipes, slug).map(Kept::thing),
            Rack.of(stores.modules()));
    Listening listening = stores.listening();
    Map<String, RecallSheet> sheets = new LinkedHashMap<>();
    for (Session.Entry entry : stored.thing().entries()) {
      Uses.standing(recipes, entry.recipe())
          .ifPresent(
              recipe -> sheets.put(entry.recipe(), sheet(recipe, RecallMarks.NONE, listening)));
    }
    SessionSheet session = SessionSheet.of(stored, plan, listening, new Uses(recalls)::last);
    layout.show(
        ctx,
        "sessions/session-sheets",
        stored.thing().title() + ", sheets",
        Frame.Section.SESSIONS,
        Map.of("session", session, "sheets", List.copyOf(sheets.values())));
  }

  /** Keeps what the page holds; it sends all of it again after a lost connection. */
  private void keep(Context ctx) {
    MediaTypes.requireBody(ctx, "application/json");
    UUID id = Requested.id(ctx);
    JsonNode body = body(ctx);
    Kept<Recipe> stored =
        recipes
            .find(body.path("recipe").asText())
            .orElseThrow(() -> Requested.notFound("The notebook has no recipe of this name."));
    Session session = session(body.path("session").asText());
    int revision = Math.max(1, Math.min(body.path("revision").asInt(1), stored.revision()));
    Recall recall =
        new Recall(
            id,
            stored.thing().id(),
            revision,
            session == null ? null : session.id(),
            Visitors.of(ctx).author(),
            clock.instant(),
            null,
            Math.max(0, body.path("step").asLong()),
            RecallMarks.read(body.path("marks")).json());
    recalls.keep(recall);
    ctx.status(HttpStatus.NO_CONTENT);
  }

  private static JsonNode body(Context ctx) {
    byte[] bytes = ctx.bodyAsBytes();
    if (bytes.length <= MOST_BYTES) {
      try {
        JsonNode body = MAPPER.readTree(new String(bytes, StandardCharsets.UTF_8));
        if (body.isObject()) {
          return body;
        }
      } catch (JsonProcessingException e) {
        // told below
      }
    }
    throw Refusal.of(Refusal.Kind.MALFORMED, "not-a-recall", "A JSON object is expected.");
  }

  private void finish(Context ctx) {
    Kept<Recipe> stored = standing(ctx);
    Recipe recipe = stored.thing();
    Session session = session(ctx.formParam("session"));
    RecallMarks marks = marks(ctx);
    Ticking ticking = new Ticking(id(ctx), step(ctx), marks);
    try {
      Recipe changed = asSet(recipe, marks, Rack.of(stores.modules()));
      String address =
          session == null ? "/recipes/" + recipe.slug() : "/sessions/" + session.slug();
      if ("yes".equals(ctx.formParam("save")) && !changed.equals(recipe)) {
        long change =
            acts.change(
                recipe.id(),
                Requested.version(ctx),
                changed,
                Visitors.of(ctx).author(),
                "set up again: " + DifferenceWords.summary(Differences.between(recipe, changed)));
        address = "/changes/" + change;
      }
      Recall recall =
          new Recall(
              ticking.id(),
              recipe.id(),
              stored.revision(),
              session == null ? null : session.id(),
              Visitors.of(ctx).author(),
              clock.instant(),
              null,
              ticking.step(),
              marks.json());
      recalls.keep(recall.finished(clock.instant()));
      stores.marks().used(List.of(recipe.id()), Visitors.of(ctx).author(), clock.instant());
      ctx.redirect(address, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      show(ctx, Requested.recipe(ctx, recipes), session, ticking, refusal.faults());
    }
  }

  /**
   * A recipe whose knobs and switches stand where they were set. A knob of the rack that is tied to
   * a value of the sound sets that too.
   */
  private static Recipe asSet(Recipe recipe, RecallMarks marks, Rack rack) {
    List<Recipe.Setting> turned = new ArrayList<>();
    List<Recipe.Setting> settings = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    Map<String, Integer> seen = new HashMap<>();
    for (Recipe.Setting setting : recipe.settings()) {
      String text = marks.asSet().get(RecallSheet.unique(RecallSheet.nameOf(setting), seen));
      Position at = setting.at();
      if (text != null) {
        Optional<Position> read = Position.read(text);
        if (read.isEmpty()) {
          String message =
              setting.module()
                  + " "
                  + setting.control()
                  + ": found "
                  + text
                  + ", expected "
                  + Position.EXPECTED;
          faults.add(new Fault("", 0, "not-a-position", text, Position.EXPECTED, message));
        }
        at = read.orElse(at);
      }
      Recipe.Setting now =
          new Recipe.Setting(setting.module(), setting.control(), at, setting.forValue());
      settings.add(now);
      // Switches too: the range of a knob may hang on one.
      if (!at.equals(setting.at()) || at instanceof Position.Named) {
        turned.add(now);
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return DialledSettings.of(recipe.withSettings(turned), rack).asDialled().withSettings(settings);
  }

  private static RecallMarks marks(Context ctx) {
    Map<String, String> asSet = new LinkedHashMap<>();
    ctx.formParamMap()
        .forEach(
            (name, values) -> {
              String text = values.isEmpty() ? "" : values.get(0).strip();
              if (name.startsWith(AS_SET) && !text.isEmpty()) {
                asSet.put(name.substring(AS_SET.length()), text);
              }
            });
    return new RecallMarks(new LinkedHashSet<>(ctx.formParams("tick")), asSet);
  }

  private UUID id(Context ctx) {
    String text = ctx.formParam("id");
    return text != null && ID.matcher(text).matches() ? UUID.fromString(text) : ids.get();
  }

  private static long step(Context ctx) {
    String text = ctx.formParam("step");
    // The last word is the latest, also where no script counted.
    return text != null && text.matches("[0-9]{1,15}") ? Long.parseLong(text) + 1 : 1;
  }

  private @Nullable Session session(@Nullable String slug) {
    return slug == null || slug.isBlank()
        ? null
        : sessions.find(slug).map(Kept::thing).orElse(null);
  }

  private Kept<Recipe> standing(Context ctx) {
    Kept<Recipe> stored = Requested.recipe(ctx, recipes);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.thing().title() + " is in the bin: take it out first.");
    }
    return stored;
  }
}
