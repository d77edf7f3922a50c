package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.UUID;
import java.util.stream.Collectors;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.Gate;
import thudbook.equipment.GateHistory;
import thudbook.equipment.GateStore;
import thudbook.recipes.Gates;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** The studio's gates: all of them, one as it was written, its history, and writing. */
final class GateRoutes {
  private static final String PATH = "/api/gates";

  private final GateHistory gates;
  private final Gates acts;
  private final Identity identity;

  /**
   * Routes over these stores.
   *
   * @param identity gives ids and slugs to gates that come without
   */
  GateRoutes(GateHistory gates, Gates acts, Identity identity) {
    this.gates = gates;
    this.acts = acts;
    this.identity = identity;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.post(PATH, this::create);
    config.routes.get(PATH + "/{id}", this::gate);
    config.routes.put(PATH + "/{id}", this::change);
    config.routes.delete(PATH + "/{id}", this::bin);
    config.routes.post(PATH + "/{id}/restore", this::unbin);
    config.routes.get(PATH + "/{id}/document", this::document);
    config.routes.get(PATH + "/{id}/revisions", this::revisions);
    config.routes.get(PATH + "/{id}/revisions/{number}", this::revision);
    config.routes.post(PATH + "/{id}/revisions/{number}/restore", this::restore);
  }

  private void list(Context ctx) {
    ctx.header("Cache-Control", "no-store");
    Json.answer(
        ctx,
        gates.all().stream()
            .map(stored -> Documents.json(stored.gate()))
            .collect(Collectors.joining(",", "{\"gates\":[", "]}")));
  }

  private void gate(Context ctx) {
    GateStore.Stored stored = found(ctx);
    Gate gate = stored.gate();
    if (!Kept.answered(ctx, gate.slug(), gate.id(), stored.version(), Json.MEDIA_TYPE)) {
      Json.answer(ctx, Documents.json(gate));
    }
  }

  private void document(Context ctx) {
    GateStore.Stored stored = found(ctx);
    Gate gate = stored.gate();
    if (!Kept.answered(ctx, gate.slug(), gate.id(), stored.version(), Kept.DOCUMENT_TYPE)) {
      Kept.answerDocument(ctx, stored.document());
    }
  }

  private void create(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Gate gate = Documents.gateFromJson(ctx.bodyAsBytes(), identity);
    acts.create(new Gates.Written(gate, Documents.write(gate)), Author.OWNER, "wrote it down");
    answerWritten(ctx, gate.id());
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    GateStore.Stored stored = found(ctx);
    Gate before = stored.gate();
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Gate gate =
        Documents.gateFromJson(ctx.bodyAsBytes(), new SameIdentity(before.id(), before.slug()));
    Kept.requireSame(before.id(), gate.id());
    acts.change(
        gate.id(),
        version,
        new Gates.Written(gate, Documents.write(gate)),
        Author.OWNER,
        DifferenceWords.summary(Differences.between(before, gate)));
    answerWritten(ctx, gate.id());
  }

  private void bin(Context ctx) {
    GateStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Json.answer(ctx, HistoryJson.done(acts.bin(stored.gate().id(), version, Author.OWNER)));
  }

  private void unbin(Context ctx) {
    Gate gate = any(ctx).gate();
    Json.answer(ctx, HistoryJson.done(acts.unbin(gate.id(), Author.OWNER)));
  }

  private void revisions(Context ctx) {
    HistoryJson.Wanted wanted = HistoryJson.Wanted.of(ctx);
    Gate gate = found(ctx).gate();
    if (!Kept.sentOn(ctx, gate.slug(), gate.id())) {
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          HistoryJson.page(gates.revisions(gate.id(), wanted.below(), wanted.limit()), wanted));
    }
  }

  private void revision(Context ctx) {
    Revision<Gate> revision =
        gates
            .revision(found(ctx).gate().id(), HistoryJson.number(ctx))
            .orElseThrow(HistoryJson::noSuchRevision);
    Json.answer(ctx, HistoryJson.revision(revision, "gate", Documents.json(revision.noun())));
  }

  private void restore(Context ctx) {
    GateStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    UUID id = stored.gate().id();
    acts.restore(id, version, HistoryJson.number(ctx), Author.OWNER, Documents::write);
    answerWritten(ctx, id);
  }

  private void answerWritten(Context ctx, UUID id) {
    GateStore.Stored written = gates.find(id.toString()).orElseThrow();
    Kept.answerWritten(
        ctx, PATH, written.gate().slug(), written.version(), Documents.json(written.gate()));
  }

  private GateStore.Stored found(Context ctx) {
    GateStore.Stored stored = any(ctx);
    if (stored.binnedAt() != null) {
      throw Kept.inBin(stored.gate().title());
    }
    return stored;
  }

  private GateStore.Stored any(Context ctx) {
    return gates.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("gate"));
  }
}
