package thudbook.api;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.UUID;
import thudbook.changes.Kept;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** What answers about anything that is kept have in common: its name, its version, its document. */
final class KeptAnswers {
  static final String DOCUMENT_TYPE = "text/markdown";

  private KeptAnswers() {}

  /**
   * Sends a reader on who came by an old slug, and answers 304 to one who has this version.
   *
   * @return whether the answer is complete
   * @throws thudbook.web.HttpError 406 if the type is not accepted
   */
  static boolean answered(Context ctx, Kept<?> kept, String type) {
    MediaTypes.requireAccepted(ctx, type);
    if (sentOn(ctx, kept)) {
      return true;
    }
    ctx.header("Cache-Control", "no-cache");
    return EntityTags.answered(ctx, EntityTags.ofVersion(kept.version()));
  }

  /** Sends a reader on who came neither by the slug nor by the id. */
  static boolean sentOn(Context ctx, Kept<?> kept) {
    String asked = ctx.pathParam("id");
    if (asked.equals(kept.slug()) || asked.equals(kept.id().toString())) {
      return false;
    }
    String query = ctx.queryString();
    String path = ctx.endpoint().path.replace("{id}", kept.slug());
    ctx.redirect(query == null ? path : path + "?" + query, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }

  static void answerDocument(Context ctx, String document) {
    ctx.contentType(DOCUMENT_TYPE + "; charset=utf-8").result(document);
  }

  /** Answers with something that was just written. */
  static void answerWritten(Context ctx, String path, String slug, long version, String json) {
    ctx.header("ETag", EntityTags.ofVersion(version)).header("Cache-Control", "no-cache");
    if (ctx.method().equals(HandlerType.POST) && path.equals(ctx.endpoint().path)) {
      ctx.status(HttpStatus.CREATED).header("Location", path + "/" + slug);
    }
    Json.answer(ctx, json);
  }

  /**
   * Refuses a body that names another id than the address does.
   *
   * @param told the id of the body
   */
  static void requireSame(UUID id, UUID told) {
    if (!id.equals(told)) {
      throw new Refusal(
          Refusal.Kind.REFUSED_VALUES,
          List.of(
              new Fault(
                  "/id",
                  0,
                  "other-id",
                  told.toString(),
                  id.toString(),
                  "id: found "
                      + told
                      + ", expected "
                      + id
                      + ", the one that this address has, or no id")));
    }
  }

  static Refusal inBin(String title) {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND, "in-bin", title + " is in the bin: restore it to read it here.");
  }

  static Refusal notFound(String noun) {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND, "no-such-" + noun, "There is no " + noun + " at this address.");
  }
}
