package thudbook.pages.sessions;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.Rack;
import thudbook.library.Library;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.frame.Requested;
import thudbook.pages.reading.Uses;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.Plan;
import thudbook.sessions.RecallStore;
import thudbook.sessions.Session;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/** Sessions: the list, one to read, planning, and taking another order. */
public final class SessionRoutes {
  /** So many recipes are offered while one is named; any other can be typed. */
  private static final int OFFERED = 200;

  private static final Pattern ORDER = Pattern.compile("[0-9]{1,3}(,[0-9]{1,3})*");

  private final Layout layout;
  private final Supplier<Listening> listening;
  private final Store<Session> sessions;
  private final Keeper<Session> acts;
  private final RecipeStore recipes;
  private final RecallStore recalls;
  private final Library library;
  private final Supplier<Rack> rack;
  private final Uses uses;
  private final NewIdentity identity;

  /**
   * Pages over these stores.
   *
   * @param ids gives new sessions their ids
   */
  public SessionRoutes(Layout layout, Stores stores, Acts acts, Supplier<UUID> ids) {
    this.layout = layout;
    this.listening = stores::listening;
    this.sessions = stores.sessions();
    this.acts = acts.sessions();
    this.recipes = stores.recipes();
    this.recalls = stores.recalls();
    this.library = stores.library();
    this.rack = () -> Rack.of(stores.modules());
    this.uses = new Uses(recalls);
    this.identity = new NewIdentity(ids, sessions::slugTaken);
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/sessions", this::list)
        .get("/sessions/new", this::fresh)
        .post("/sessions/new", this::create)
        .get("/sessions/{slug}", this::session)
        .get("/sessions/{slug}/edit", this::edit)
        .post("/sessions/{slug}/edit", this::change)
        .post("/sessions/{slug}/order", this::order)
        .post("/sessions/{slug}/bin", this::bin);
  }

  private void list(Context ctx) {
    String number = ctx.queryParam("number");
    if (number != null && !number.isBlank()) {
      String slug =
          recalls
              .numbered(number.strip())
              .orElseThrow(() -> Requested.notFound("No recipe has this number."));
      ctx.redirect("/recipes/" + slug + "/recall", HttpStatus.SEE_OTHER);
      return;
    }
    SessionIndex index = SessionIndex.of(sessions);
    layout.show(
        ctx, "sessions/sessions", "Sessions", Frame.Section.SESSIONS, Map.of("index", index));
  }

  private void session(Context ctx) {
    Kept<Session> stored = found(ctx);
    Session session = stored.thing();
    if (!ctx.pathParam("slug").equals(session.slug())) {
      ctx.redirect("/sessions/" + session.slug(), HttpStatus.PERMANENT_REDIRECT);
      return;
    }
    SessionSheet sheet = SessionSheet.of(stored, plan(session), listening.get(), uses::last);
    layout.show(
        ctx, "sessions/session", session.title(), Frame.Section.SESSIONS, Map.of("sheet", sheet));
  }

  private Plan plan(Session session) {
    return Plan.of(session, this::recipe, rack.get());
  }

  private Optional<Recipe> recipe(String slug) {
    return Uses.standing(recipes, slug).map(Kept::thing);
  }

  /** A new session, of the recipes that the address names if it does. */
  private void fresh(Context ctx) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    String named = ctx.queryParam("recipes");
    if (named != null) {
      List<String> slugs =
          Arrays.stream(named.split(",")).map(String::strip).filter(s -> !s.isEmpty()).toList();
      for (int i = 0; i < Math.min(slugs.size(), Session.MOST_ENTRIES); i++) {
        fields.put("recipes." + i + ".recipe", List.of(slugs.get(i)));
      }
    }
    show(ctx, SessionForm.of("/sessions/new", 0, fields, List.of()));
  }

  private void create(Context ctx) {
    Map<String, List<String>> fields = typed(ctx);
    if (!saves(ctx)) {
      show(ctx, SessionForm.of("/sessions/new", 0, fields, List.of()));
      return;
    }
    try {
      Session session = Documents.SESSION.fromForm(fields, identity);
      refuseUnknown(session);
      acts.create(session, Visitors.of(ctx).author(), "planned " + session.title());
      ctx.redirect("/sessions/" + session.slug(), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      show(ctx, SessionForm.of("/sessions/new", 0, fields, refusal.faults()));
    }
  }

  private void edit(Context ctx) {
    Kept<Session> stored = standing(ctx);
    show(
        ctx,
        SessionForm.of(
            address(stored), stored.version(), Documents.form(stored.thing()), List.of()));
  }

  private void change(Context ctx) {
    Kept<Session> stored = standing(ctx);
    long version = Requested.version(ctx);
    Map<String, List<String>> fields = typed(ctx);
    if (!saves(ctx)) {
      show(ctx, SessionForm.of(address(stored), version, fields, List.of()));
      return;
    }
    Session before = stored.thing();
    try {
      Session session =
          Documents.SESSION.fromForm(fields, new SameIdentity(before.id(), before.slug()));
      refuseUnknown(session);
      if (version != stored.version()) {
        ctx.status(HttpStatus.PRECONDITION_FAILED);
        show(
            ctx,
            SessionForm.of(address(stored), stored.version(), fields, meanwhile(session, before)));
        return;
      }
      String what = DifferenceWords.summary(Differences.between(before, session));
      acts.change(before.id(), version, session, Visitors.of(ctx).author(), what);
      ctx.redirect("/sessions/" + session.slug(), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      show(ctx, SessionForm.of(address(stored), version, fields, refusal.faults()));
    }
  }

  /** What saving would change of what somebody else saved in between. */
  private static List<Fault> meanwhile(Session typed, Session saved) {
    List<Fault> faults = new ArrayList<>();
    faults.add(
        plain(
            "Somebody saved this session while you were writing. Nothing is overwritten yet: saving"
                + " again makes these changes to what they saved."));
    DifferenceWords.sentences(saved, typed).forEach(sentence -> faults.add(plain(sentence)));
    return faults;
  }

  private static Fault plain(String message) {
    return new Fault("", 0, "stale", "", "", message);
  }

  /** A form is for recipes that are there; a document may name others. */
  private void refuseUnknown(Session session) {
    List<Fault> faults = new ArrayList<>();
    for (int i = 0; i < session.entries().size(); i++) {
      String slug = session.entries().get(i).recipe();
      if (recipe(slug).isEmpty()) {
        String message = "There is no recipe " + slug + " in this notebook.";
        faults.add(new Fault("/recipes/" + i + "/recipe", 0, "no-such-recipe", slug, "", message));
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
  }

  private void order(Context ctx) {
    Kept<Session> stored = standing(ctx);
    Session before = stored.thing();
    Session session;
    try {
      session = before.inOrder(numbers(ctx.formParam("order")));
    } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES, "not-an-order", "An order of this session is expected.");
    }
    long change =
        acts.change(
            before.id(),
            Requested.version(ctx),
            session,
            Visitors.of(ctx).author(),
            "took the order with the fewest moves in " + before.title());
    ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private static List<Integer> numbers(String text) {
    if (text == null || !ORDER.matcher(text).matches()) {
      throw new IllegalArgumentException("an order was expected, found " + text);
    }
    return Arrays.stream(text.split(",")).map(Integer::valueOf).toList();
  }

  private void bin(Context ctx) {
    long change =
        acts.bin(standing(ctx).thing().id(), Requested.version(ctx), Visitors.of(ctx).author());
    ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private static Map<String, List<String>> typed(Context ctx) {
    Map<String, List<String>> fields = PostedForm.of(ctx).recipe();
    fields.remove("version");
    String deed = ctx.formParam("form.do");
    return SessionForm.after(deed == null ? "" : deed, fields);
  }

  private static boolean saves(Context ctx) {
    return "save".equals(ctx.formParam("form.do"));
  }

  private static String address(Kept<Session> stored) {
    return "/sessions/" + stored.thing().slug() + "/edit";
  }

  private void show(Context ctx, SessionForm form) {
    String title = form.version() == 0 ? "Plan a session" : "Change a session";
    layout.show(
        ctx,
        "sessions/session-form",
        title,
        Frame.Section.SESSIONS,
        Map.of("form", form, "offered", library.newest(Visitors.of(ctx).author(), OFFERED)));
  }

  private Kept<Session> found(Context ctx) {
    return sessions
        .find(ctx.pathParam("slug"))
        .orElseThrow(() -> Requested.notFound("The notebook has no session of this name."));
  }

  private Kept<Session> standing(Context ctx) {
    Kept<Session> stored = found(ctx);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.thing().title() + " is in the bin: take it out first.");
    }
    return stored;
  }
}
