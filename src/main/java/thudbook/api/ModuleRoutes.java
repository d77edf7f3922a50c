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
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.recipes.Modules;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** Modules: all of them, one as it was written, its history, and writing. */
final class ModuleRoutes {
  private static final String PATH = "/api/modules";

  private final ModuleStore modules;
  private final Modules acts;
  private final Identity identity;

  /**
   * Routes over these stores.
   *
   * @param identity gives ids and slugs to modules that come without
   */
  ModuleRoutes(ModuleStore modules, Modules acts, Identity identity) {
    this.modules = modules;
    this.acts = acts;
    this.identity = identity;
  }

  void addTo(JavalinConfig config) {
    config.routes.get(PATH, this::list);
    config.routes.post(PATH, this::create);
    config.routes.get(PATH + "/{id}", this::module);
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
        modules.all().stream()
            .map(stored -> Documents.json(stored.module()))
            .collect(Collectors.joining(",", "{\"modules\":[", "]}")));
  }

  private void module(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    Module module = stored.module();
    if (!Kept.answered(ctx, module.slug(), module.id(), stored.version(), Json.MEDIA_TYPE)) {
      Json.answer(ctx, Documents.json(module));
    }
  }

  private void document(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    Module module = stored.module();
    if (!Kept.answered(ctx, module.slug(), module.id(), stored.version(), Kept.DOCUMENT_TYPE)) {
      Kept.answerDocument(ctx, stored.document());
    }
  }

  private void create(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    Module module = Documents.moduleFromJson(ctx.bodyAsBytes(), identity);
    acts.create(
        new Modules.Written(module, Documents.write(module)), Author.OWNER, "wrote it down");
    answerWritten(ctx, module.id());
  }

  private void change(Context ctx) {
    MediaTypes.requireBody(ctx, Json.MEDIA_TYPE);
    ModuleStore.Stored stored = found(ctx);
    Module before = stored.module();
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Module module =
        Documents.moduleFromJson(ctx.bodyAsBytes(), new SameIdentity(before.id(), before.slug()));
    Kept.requireSame(before.id(), module.id());
    acts.change(
        module.id(),
        version,
        new Modules.Written(module, Documents.write(module)),
        Author.OWNER,
        DifferenceWords.summary(Differences.between(before, module)));
    answerWritten(ctx, module.id());
  }

  private void bin(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    Json.answer(ctx, HistoryJson.done(acts.bin(stored.module().id(), version, Author.OWNER)));
  }

  private void unbin(Context ctx) {
    Module module = any(ctx).module();
    Json.answer(ctx, HistoryJson.done(acts.unbin(module.id(), Author.OWNER)));
  }

  private void revisions(Context ctx) {
    HistoryJson.Wanted wanted = HistoryJson.Wanted.of(ctx);
    Module module = found(ctx).module();
    if (!Kept.sentOn(ctx, module.slug(), module.id())) {
      ctx.header("Cache-Control", "no-store");
      Json.answer(
          ctx,
          HistoryJson.page(modules.revisions(module.id(), wanted.below(), wanted.limit()), wanted));
    }
  }

  private void revision(Context ctx) {
    Revision<Module> revision =
        modules
            .revision(found(ctx).module().id(), HistoryJson.number(ctx))
            .orElseThrow(HistoryJson::noSuchRevision);
    Json.answer(ctx, HistoryJson.revision(revision, "module", Documents.json(revision.noun())));
  }

  private void restore(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    long version = EntityTags.wantedVersion(ctx, stored.version());
    UUID id = stored.module().id();
    acts.restore(id, version, HistoryJson.number(ctx), Author.OWNER, Documents::write);
    answerWritten(ctx, id);
  }

  private void answerWritten(Context ctx, UUID id) {
    ModuleStore.Stored written = modules.find(id.toString()).orElseThrow();
    Kept.answerWritten(
        ctx, PATH, written.module().slug(), written.version(), Documents.json(written.module()));
  }

  private ModuleStore.Stored found(Context ctx) {
    ModuleStore.Stored stored = any(ctx);
    if (stored.binnedAt() != null) {
      throw Kept.inBin(stored.module().title());
    }
    return stored;
  }

  private ModuleStore.Stored any(Context ctx) {
    return modules.find(ctx.pathParam("id")).orElseThrow(() -> Kept.notFound("module"));
  }
}
