package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.UUID;
import java.util.stream.Collectors;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Thing;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Identity;
import thudbook.documents.NounDocument;
import thudbook.documents.SameIdentity;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/**
 * Things of any noun: all of them, one as it was written, its history, and writing.
 *
 * @param <T> what kind of things
 */
final class KeptRoutes<T extends Thing> {
  private final NounDocument<T> noun;
  private final Keeper<T> acts;
  private final Identity identity;
  private final String path;

  /**
   * Routes over the things of a noun.
   *
   * @param identity gives ids and slugs to things that come without
   */
  KeptRoutes(NounDocument<T> noun, Keeper<T> acts, Identity identity) {
    this.noun = noun;
    this.acts = acts;
    this.identity = identity;
    this.path = "/api/" + noun.word() + "s";
  }

  /** Adds all of them. */
  void addTo(JavalinConfig config) {
    config.routes.get(path, this::list);
    config.routes.post(path + "/{id}/restore", this::unbin);
    addToBut(config);
  }

  /** Adds all but the list and the way out of the bin, which are made otherwise for this noun. */
  void addToBut(JavalinConfig config) {
    config.routes.post(path, this::create);
    config.routes.get(path + "/{id}", this::thing);
    config.routes.put(path + "/{id}", this::change);
    config.routes.delete(path + "/{id}", this::bin);
    config.routes.get(path + "/{id}/document", this::document);
    config.routes.get(path + "/{id}/revisions", this::revisions);
    config.routes.get(path + "/{id}/revisions/{number}", this::revision);
    config.routes.post(path + "/{id}/revisions/{number}/restore", this::restore);
  }

  private void list(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        acts.store().all().stream()
            .map(kept -> noun.json(kept.thing()))
            .collect(Collectors.joining(",", "{\"" + noun.word() + "s\":[", "]}")));
  }

  private void thing(Context ctx) {
    Kept<T> kept = found(ctx);
    if (!KeptAnswers.answered(ctx, kept, Json.MEDIA_TYPE)) {
      Json.answer(ctx, noun.json(kept.thing()));
    }
  }

  private void document(Context ctx) {
    Kept<T> kept = found(ctx);
    if (!KeptAnswers.answered(ctx, kept, KeptAnswers.DOCUMENT_TYPE)) {
      KeptAnswers.answerDocument(ctx, kept.document());
    }
  }

  private void create(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    T thing = noun.fromJson(ctx.bodyAsBytes(), identity);
    acts.create(thing, Visitors.of(ctx).author(), "wrote it down");
    answerWritten(ctx, thing.id());
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Kept<T> before = found(ctx);
    long version = EntityTags.wantedVersion(ctx, before.version());
    T thing = noun.fromJson(ctx.bodyAsBytes(), new SameIdentity(before.id(), before.slug()));
    KeptAnswers.requireSame(before.id(), thing.id());
    acts.change(
        thing.id(),
        version,
        thing,
        Visitors.of(ctx).author(),
        DifferenceWords.summary(Differences.between(noun, before.thing(), thing)));
    answerWritten(ctx, thing.id());
  }

  private void bin(Context ctx) {
    Kept<T> kept = found(ctx);
    long version = EntityTags.wantedVersion(ctx, kept.version());
    Json.answer(ctx, HistoryJson.done(acts.bin(kept.id(), version, Visitors.of(ctx).author())));
  }

  private void unbin(Context ctx) {
    Json.answer(ctx, HistoryJson.done(acts.unbin(any(ctx).id(), Visitors.of(ctx).author())));
  }

  private void revisions(Context ctx) {
    HistoryJson.Wanted wanted = HistoryJson.Wanted.of(ctx);
    Kept<T> kept = found(ctx);
    if (!KeptAnswers.sentOn(ctx, kept)) {
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          HistoryJson.page(
              acts.store().revisions(kept.id(), wanted.below(), wanted.limit()), wanted));
    }
  }

  private void revision(Context ctx) {
    Revision<T> revision =
        acts.store()
            .revision(found(ctx).id(), HistoryJson.number(ctx))
            .orElseThrow(HistoryJson::noSuchRevision);
    Json.answer(ctx, HistoryJson.revision(revision, noun.word(), noun.json(revision.thing())));
  }

  private void restore(Context ctx) {
    Kept<T> kept = found(ctx);
    long version = EntityTags.wantedVersion(ctx, kept.version());
    acts.restore(kept.id(), version, HistoryJson.number(ctx), Visitors.of(ctx).author());
    answerWritten(ctx, kept.id());
  }

  private void answerWritten(Context ctx, UUID id) {
    Kept<T> written = acts.store().find(id.toString()).orElseThrow();
    KeptAnswers.answerWritten(
        ctx, path, written.slug(), written.version(), noun.json(written.thing()));
  }

  /** The thing of the address, which is not in the bin. */
  Kept<T> found(Context ctx) {
    Kept<T> kept = any(ctx);
    if (kept.isBinned()) {
      throw KeptAnswers.inBin(kept.title());
    }
    return kept;
  }

  private Kept<T> any(Context ctx) {
    return acts.store()
        .find(ctx.pathParam("id"))
        .orElseThrow(() -> KeptAnswers.notFound(noun.word()));
  }
}
