package thudbook.api;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.UUID;
import thudbook.quantities.Refusal;
import thudbook.web.EntityTags;
import thudbook.web.MediaTypes;

/** What answers about anything that is kept have in common: its name, its version, its document. */
final class Kept {
  static final String DOCUMENT_TYPE = "text/markdown";

  private Kept() {}

  /**
   * Sends a reader on who came by an old slug, and answers 304 to one who has this version.
   *
   * @return whether the answer is complete
   * @throws thudbook.web.HttpError 406 if the type is not accepted
   */
  static boolean answered(Context ctx, String slug, UUID id, long version, String type) {
    MediaTypes.requireAccepted(ctx, type);
    if (sentOn(ctx, slug, id)) {
      return true;
    }
    ctx.header("Cache-Control", "no-cache");
    return EntityTags.answered(ctx, EntityTags.ofVersion(version));
  }

  /** Sends a reader on who came neither by the slug nor by the id. */
  static boolean sentOn(Context ctx, String slug, UUID id) {
    String asked = ctx.pathParam("id");
    if (asked.equals(slug) || asked.equals(id.toString())) {
      return false;
    }
    String query = ctx.queryString();
    String path = ctx.endpoint().path.replace("{id}", slug);
    ctx.redirect(query == null ? path : path + "?" + query, HttpStatus.PERMANENT_REDIRECT);
    return true;
  }

  static void answerDocument(Context ctx, String document) {
    ctx.contentType(DOCUMENT_TYPE + "; charset=utf-8").result(document);
  }

  static Refusal notFound(String noun) {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND, "no-such-" + noun, "There is no " + noun + " at this address.");
  }
}
