package thudbook.api;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import thudbook.changes.Changes;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.NounDocument;
import thudbook.documents.exchange.DocumentStore;
import thudbook.documents.exchange.DocumentZip;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.photos.PhotoStore;
import thudbook.photos.Picture;
import thudbook.web.MediaTypes;
import thudbook.web.Visitors;

/** Documents in, one at a time, and out, all together. */
final class DocumentRoutes {
  private static final String PATH = "/api/documents";
  private static final String ZIP = "application/zip";
  private static final int PHOTOS_AT_ONCE = 50;

  private final List<NounDocument<?>> nouns;
  private final DocumentStore documents;
  private final PhotoStore photos;
  private final Changes acts;
  private final Identity identity;

  /**
   * Routes over these stores and acts.
   *
   * @param identity gives ids and slugs to documents that come without
   */
  DocumentRoutes(Stores stores, Acts acts, Identity identity) {
    this.nouns = acts.nouns();
    this.documents = stores.documents();
    this.photos = stores.photos();
    this.acts = acts.changes();
    this.identity = identity;
  }

  void addTo(JavalinConfig config) {
    config.routes.post(PATH, this::add);
    config.routes.get(PATH, this::all);
  }

  private void add(Context ctx) {
    MediaTypes.requireBody(ctx, KeptAnswers.DOCUMENT_TYPE);
    Documents.Read<?> read = Documents.read(nouns, ctx.bodyAsBytes(), identity);
    Thing thing = read.thing();
    long change =
        acts.write(List.of(read.write(null)), Visitors.of(ctx).author(), "added " + thing.title());
    ctx.header("Location", "/api/" + read.word() + "s/" + thing.slug());
    ObjectNode answer =
        Json.object()
            .put("noun", read.word())
            .put("id", thing.id().toString())
            .put("slug", thing.slug())
            .put("change", change);
    answer.set("notes", Json.words(read.notes()));
    ctx.status(HttpStatus.CREATED).header("Cache-Control", "no-store");
    Json.answer(ctx, answer);
  }

  /** Written while it is read, a few documents at a time: it may be larger than memory. */
  private void all(Context ctx) {
    MediaTypes.requireAccepted(ctx, ZIP);
    ctx.contentType(ZIP)
        .header("Cache-Control", "no-store")
        .header("Content-Disposition", "attachment; filename=\"thudbook.zip\"");
    try (DocumentZip zip = new DocumentZip(ctx.outputStream())) {
      zip.addAll(nouns, documents);
      String after = "";
      do {
        String from = after;
        after = "";
        for (String file : photos.files(from, PHOTOS_AT_ONCE)) {
          Picture picture = photos.picture(file).orElse(null);
          if (picture != null) {
            zip.add("media/" + file, picture.open());
          }
          after = file;
        }
      } while (!after.isEmpty());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
