package thudbook.pages.sharing;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import thudbook.changes.Changes;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.documents.exchange.Import;
import thudbook.documents.exchange.Incoming;
import thudbook.documents.exchange.Parcel;
import thudbook.library.Library;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.photos.Photos;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.ErrorKind;
import thudbook.web.Uploads;
import thudbook.web.Visitors;

/** Taking in and giving out: a look before anything is written, then one act that can be undone. */
public final class ShareRoutes {
  private final Layout layout;
  private final RecipeStore recipes;
  private final Library library;
  private final List<NounDocument<?>> nouns;
  private final Changes changes;
  private final Photos photos;
  private final Supplier<UUID> ids;
  private final PendingImports pending;

  /**
   * Pages over these stores and acts.
   *
   * @param ids names what waits, and documents that come without an id
   */
  public ShareRoutes(Layout layout, Stores stores, Acts acts, Supplier<UUID> ids) {
    this.layout = layout;
    this.recipes = stores.recipes();
    this.library = stores.library();
    this.nouns = acts.nouns();
    this.changes = acts.changes();
    this.photos = acts.photos();
    this.ids = ids;
    this.pending = new PendingImports(ids);
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/share/recipes.csv", this::table)
        .get("/share", ctx -> show(ctx, List.of(), ""))
        .post("/share/imports", this::look)
        .get("/share/imports/{name}", this::preview)
        .post("/share/imports/{name}", this::take);
  }

  private void show(Context ctx, List<String> faults, String text) {
    layout.show(
        ctx, "sharing/index", "Share", Frame.Section.SHARE, Map.of("faults", faults, "text", text));
  }

  private void table(Context ctx) throws IOException {
    ctx.contentType("text/csv; charset=utf-8")
        .header("Cache-Control", "no-store")
        .header("Content-Disposition", "attachment; filename=\"thudbook.csv\"");
    try (Writer out = new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8)) {
      new TableExport(library, recipes, Visitors.of(ctx).author()).write(out);
    }
  }

  /** Reads what was sent. What is wrong is told on the same page, where pasted text stays. */
  private void look(Context ctx) {
    if (!Uploads.isMultipart(ctx)) {
      throw Refusal.of(Refusal.Kind.MALFORMED, "not-multipart", "A form of files is expected.");
    }
    List<Uploads.Sent> files = Uploads.files(ctx, "files");
    String text = Objects.requireNonNullElse(ctx.formParam("text"), "");
    try {
      String name = pending.hold(read(files, text));
      ctx.redirect("/share/imports/" + name, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      show(ctx, refusal.faults().stream().map(Fault::message).toList(), text);
    }
  }

  private PendingImports.Pending read(List<Uploads.Sent> files, String text) {
    Parcel parcel = new Parcel();
    for (Uploads.Sent file : files) {
      parcel.add(file.name(), file.content().open());
    }
    if (!text.isBlank()) {
      parcel.addText("pasted text", text);
    }
    List<String> columns = new ArrayList<>();
    List<Incoming> documents =
        Incoming.read(nouns, parcel, Incoming.identity(ids, changes::slugTaken), columns);
    Map<String, String> names = new HashMap<>();
    List<Photos.Ready> ready = photos(parcel, names);
    List<Incoming> renamed =
        documents.stream().map(document -> withPhotos(document, names)).toList();
    return new PendingImports.Pending(
        Import.of(renamed, changes), ready, parcel.leftOut(), columns);
  }

  /** Makes the photos, and notes which name each gets that documents know by the hash it had. */
  private List<Photos.Ready> photos(Parcel parcel, Map<String, String> names) {
    List<Photos.Ready> made = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (Parcel.Item item : parcel.photos()) {
      try {
        Photos.Ready ready = photos.prepare(item.bytes());
        made.add(ready);
        names.put(Photos.sha256(item.bytes()), ready.photo().file());
      } catch (Refusal refusal) {
        String message = item.name() + ": " + refusal.faults().get(0).message();
        faults.add(new Fault("", 0, refusal.faults().get(0).code(), "", "", message));
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return made;
  }

  private static Incoming withPhotos(Incoming document, Map<String, String> names) {
    if (!(document.read().thing() instanceof Recipe recipe)) {
      return document;
    }
    List<Recipe.Photo> shown =
        recipe.photos().stream()
            .map(
                photo -> {
                  String hash = photo.file().substring(0, photo.file().indexOf('.'));
                  return new Recipe.Photo(names.getOrDefault(hash, photo.file()), photo.shows());
                })
            .toList();
    return new Incoming(
        document.file(),
        new Documents.Read<>(Documents.RECIPE, recipe.withPhotos(shown), document.read().notes()));
  }

  private void preview(Context ctx) {
    PendingImports.Pending found = found(ctx);
    layout.show(
        ctx,
        "sharing/preview",
        "What would change",
        Frame.Section.SHARE,
        Map.of("sheet", ImportSheet.of(ctx.path(), found)));
  }

  private void take(Context ctx) {
    PendingImports.Pending found = found(ctx);
    Set<String> chosen = new HashSet<>(ctx.formParams("take"));
    List<Import.Entry> entries = found.documents().entries();
    List<Import.Entry> taken =
        IntStream.range(0, entries.size())
            .filter(i -> i >= ImportSheet.MOST_ROWS || chosen.contains(String.valueOf(i)))
            .mapToObj(entries::get)
            .filter(Import.Entry::canBeTaken)
            .toList();
    if (taken.isEmpty()) {
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES, "nothing-chosen", "Choose at least one document.");
    }
    Set<String> named =
        taken.stream()
            .flatMap(entry -> named(entry).stream())
            .map(Recipe.Photo::file)
            .collect(Collectors.toSet());
    found.photos().stream()
        .filter(ready -> named.contains(ready.photo().file()))
        .forEach(photos::keep);
    String what =
        taken.size() == 1
            ? "took in " + taken.get(0).title()
            : "took in " + taken.size() + " documents";
    long change =
        changes.write(
            taken.stream().map(Import.Entry::write).toList(), Visitors.of(ctx).author(), what);
    pending.drop(ctx.pathParam("name"));
    ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private static List<Recipe.Photo> named(Import.Entry entry) {
    return entry.read().thing() instanceof Recipe recipe ? recipe.photos() : List.of();
  }

  private PendingImports.Pending found(Context ctx) {
    return pending
        .find(ctx.pathParam("name"))
        .orElseThrow(
            () ->
                Refusal.of(
                    Refusal.Kind.NOT_FOUND,
                    "not-waiting",
                    "What was sent does not wait here any more: send it again."));
  }
}
