package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.GateStore;
import thudbook.equipment.Rack;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.Plan;
import thudbook.sessions.Session;
import thudbook.sessions.SessionStore;
import thudbook.sessions.Sessions;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** Sessions: all of them, one as it was written, what follows from it, its history, and writing. */
final class SessionRoutes {
  private static final String PATH = "/api/sessions";

  private final SessionStore sessions;
  private final Sessions acts;
  private final Identity identity;
  private final RecipeStore recipes;
  private final GateStore studio;
  private final Supplier<Rack> rack;

  /**
   * Routes over these stores.
   *
   * @param identity gives ids and slugs to sessions that come without
   */
  SessionRoutes(
      SessionStore sessions,
      Sessions acts,
      Identity identity,
      RecipeStore recipes,
      GateStore studio,
      Supplier<Rack> rack) {
    this.sessions = sessions;
    this.acts = acts;
    this.identity = identity;
    this.recipes = recipes;
    this.studio = studio;
    this.rack = rack;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.post(PATH, this::create);
    config.routes.get(PATH + "/{id}", this::session);
    config.routes.put(PATH + "/{id}", this::change);
    config.routes.delete(PATH + "/{id}", this::bin);
    config.routes.post(PATH + "/{id}/restore", this::unbin);
    config.routes.get(PATH + "/{id}/document", this::document);
    config.routes.get(PATH + "/{id}/plan", this::plan);
    config.routes.get(PATH + "/{id}/revisions", this::revisions);
    config.routes.get(PATH + "/{id}/revisions/{number}", this::revision);
    config.routes.post(PATH + "/{id}/revisions/{number}/restore", this::restore);
  }

  private void list(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        sessions.all().stream()
            .map(stored -> Documents.json(stored.session()))
            .collect(Collectors.joining(",", "{\"sessions\":[", "]}")));
  }

  private void session(Context ctx) {
    SessionStore.Stored stored = found(ctx);
    Session session = stored.session();
    if (!Kept.answered(ctx, session.slug(), session.id(), stored.version(), Json.MEDIA_TYPE)) {
      Json.answer(ctx, Documents.json(session));
    }
  }

  private void document(Context ctx) {
    SessionStore.Stored stored = found(ctx);
    Session session = stored.session();
    if (!Kept.answered(ctx, session.slug(), session.id(), stored.version(), Kept.DOCUMENT_TYPE)) {
      Kept.answerDocument(ctx, stored.document());
    }
  }

  private void plan(Context ctx) {
    Session session = found(ctx).session();
    if (!Kept.sentOn(ctx, session.slug(), session.id())) {
      Plan plan = Plan.of(session, this::standing, rack.get());
      ctx.header("Cache-Control", "no-store");
      Json.answer(ctx, PlanJson.node(plan, studio));
    }
  }

  private Optional<Recipe> standing(String slug) {
    return recipes
        .find(slug)
        .filter(stored -> stored.binnedAt() == null)
        .map(RecipeStore.Stored::recipe);
  }

  private void create(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Session session = Documents.sessionFromJson(ctx.bodyAsBytes(), identity);
    acts.create(
        new Sessions.Written(session, Documents.write(session)), Author.OWNER, "wrote it down");
    answerWritten(ctx, session.id());
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    SessionStore.Stored stored = found(ctx);
    Session before = stored.session();
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Session session =
        Documents.sessionFromJson(ctx.bodyAsBytes(), new SameIdentity(before.id(), before.slug()));
    Kept.requireSame(before.id(), session.id());
    acts.change(
        session.id(),
        version,
        new Sessions.Written(session, Documents.write(session)),
        Author.OWNER,
        DifferenceWords.summary(Differences.between(before, session)));
    answerWritten(ctx, session.id());
  }

  private void bin(Context ctx) {
    SessionStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Json.answer(ctx, HistoryJson.done(acts.bin(stored.session().id(), version, Author.OWNER)));
  }

  private void unbin(Context ctx) {
    Session session = any(ctx).session();
    Json.answer(ctx, HistoryJson.done(acts.unbin(session.id(), Author.OWNER)));
  }

  private void revisions(Context ctx) {
    HistoryJson.Wanted wanted = HistoryJson.Wanted.of(ctx);
    Session session = found(ctx).session();
    if (!Kept.sentOn(ctx, session.slug(), session.id())) {
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          HistoryJson.page(
              sessions.revisions(session.id(), wanted.below(), wanted.limit()), wanted));
    }
  }

  private void revision(Context ctx) {
    Revision<Session> revision =
        sessions
            .revision(found(ctx).session().id(), HistoryJson.number(ctx))
            .orElseThrow(HistoryJson::noSuchRevision);
    Json.answer(ctx, HistoryJson.revision(revision, "session", Documents.json(revision.noun())));
  }

  private void restore(Context ctx) {
    SessionStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    UUID id = stored.session().id();
    acts.restore(id, version, HistoryJson.number(ctx), Author.OWNER, Documents::write);
    answerWritten(ctx, id);
  }

  private void answerWritten(Context ctx, UUID id) {
    SessionStore.Stored written = sessions.find(id.toString()).orElseThrow();
    Kept.answerWritten(
        ctx, PATH, written.session().slug(), written.version(), Documents.json(written.session()));
  }

  private SessionStore.Stored found(Context ctx) {
    SessionStore.Stored stored = any(ctx);
    if (stored.binnedAt() != null) {
      throw Kept.inBin(stored.session().title());
    }
    return stored;
  }

  private SessionStore.Stored any(Context ctx) {
    return sessions.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("session"));
  }
}
