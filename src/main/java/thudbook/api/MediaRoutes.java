package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import thudbook.photos.Photo;
import thudbook.photos.PhotoStore;
import thudbook.photos.Photos;
import thudbook.photos.Picture;
import thudbook.quantities.Refusal;
import thudbook.web.EntityTags;
import thudbook.web.ErrorKind;
import thudbook.web.HttpError;
import thudbook.web.Uploads;

/** Photos: in as they come, out as they are kept. */
final class MediaRoutes {
  /** A name is a hash: what stands at its address never changes. */
  private static final String FOR_EVER = "public, max-age=31536000, immutable";

  private final PhotoStore store;
  private final Photos photos;

  /** Routes over these photos. */
  MediaRoutes(PhotoStore store, Photos photos) {
    this.store = store;
    this.photos = photos;
  }

  void addTo(JavalinConfig config) {
    config.routes.post("/api/media", this::add);
    config.routes.get("/api/media/{file}", this::picture);
    config.routes.get("/api/media/{file}/thumbnail", this::thumbnail);
  }

  private void add(Context ctx) {
    Photo photo = photos.add(body(ctx));
    ctx.status(HttpStatus.CREATED).header("Location", "/api/media/" + photo.file());
    Json.answer(
        ctx,
        Json.object()
            .put("file", photo.file())
            .put("width", photo.width())
            .put("height", photo.height()));
  }

  private static byte[] body(Context ctx) {
    if (Uploads.isMultipart(ctx)) {
      List<Uploads.Sent> files = Uploads.files(ctx, "file");
      if (files.size() != 1) {
        throw Refusal.of(
            Refusal.Kind.REFUSED_VALUES, "one-file", "One file is expected in the field file.");
      }
      return Uploads.bytes(files.get(0));
    }
    String type = ctx.contentType();
    if (type == null || !type.startsWith("image/")) {
      throw new HttpError(ErrorKind.UNSUPPORTED_TYPE);
    }
    return ctx.bodyAsBytes();
  }

  private void picture(Context ctx) {
    answer(ctx, "", store.picture(ctx.pathParam("file")));
  }

  private void thumbnail(Context ctx) {
    answer(ctx, "-thumbnail", store.thumbnail(ctx.pathParam("file")));
  }

  private void answer(Context ctx, String which, Optional<Picture> found) {
    Picture picture = found.orElseThrow(() -> KeptAnswers.notFound("photo"));
    Photo photo =
        store.find(ctx.pathParam("file")).orElseThrow(() -> KeptAnswers.notFound("photo"));
    ctx.header("Cache-Control", FOR_EVER).contentType(photo.format().mediaType());
    if (!EntityTags.answered(ctx, '"' + photo.sha256() + which + '"')) {
      ctx.result(picture.open());
    }
  }
}
