package thudbook.pages.finding;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.documents.exchange.DocumentZip;
import thudbook.equipment.Gate;
import thudbook.library.Tagging;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.BackAddress;
import thudbook.pages.reading.Comparison;
import thudbook.photos.Picture;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;
import thudbook.web.Visitors;

/** What is done with the rows that were selected, or with all that match: one act each. */
public final class SelectionRoutes {
  private final Stores stores;
  private final Keeper<Recipe> recipes;
  private final Tagging tagging;

  public SelectionRoutes(Stores stores, Acts acts) {
    this.stores = stores;
    this.recipes = acts.recipes();
    this.tagging = acts.tagging();
  }

  public void addTo(JavalinConfig config) {
    config.routes.post("/selection", this::act);
  }

  private void act(Context context) {
    List<UUID> ids = selected(context);
    if (ids.isEmpty()) {
      throw refused("nothing-selected", "Select a recipe first: the box beside its title.");
    }
    switch (Objects.requireNonNullElse(context.formParam("act"), "")) {
      case "tag" -> tag(context, ids, true);
      case "untag" -> tag(context, ids, false);
      case "bin" -> BackAddress.lead(context, recipes.bin(ids, Visitors.of(context).author()));
      case "export" -> export(context, ids);
      case "compare" -> compare(context, ids);
      default -> throw refused("unknown-word", "Choose what to do with the recipes.");
    }
  }

  /** The recipes that were ticked, or all that the search of the page finds. */
  private List<UUID> selected(Context context) {
    if (context.formParam("all") != null) {
      String search = Objects.requireNonNullElse(context.formParam("search"), "");
      Wanted wanted =
          SearchAddress.ofQuery(search).address().wanted(stores.library()::vocabulary).wanted();
      return stores
          .library()
          .list()
          .ids(stores.library().search().all(wanted, Visitors.of(context).author()));
    }
    Set<UUID> ids = new LinkedHashSet<>();
    for (String name : context.formParams("recipe")) {
      stores.recipes().find(name).ifPresent(stored -> ids.add(stored.thing().id()));
    }
    return List.copyOf(ids);
  }

  private void tag(Context context, List<UUID> ids, boolean add) {
    String typed = Objects.requireNonNullElse(context.formParam("tags"), "");
    List<String> tags =
        Arrays.stream(typed.split(",", -1)).map(String::strip).filter(t -> !t.isEmpty()).toList();
    if (tags.isEmpty()) {
      throw refused("missing", "Write the tags into the field first, with commas between them.");
    }
    OptionalLong change =
        tagging.tag(
            ids, add ? tags : List.of(), add ? List.of() : tags, Visitors.of(context).author());
    if (change.isPresent()) {
      BackAddress.lead(context, change.getAsLong());
    } else {
      context.redirect(BackAddress.of(context), HttpStatus.SEE_OTHER);
    }
  }

  private void compare(Context context, List<UUID> ids) {
    if (ids.size() > Comparison.MOST) {
      throw refused(
          "too-many",
          "Up to " + Comparison.MOST + " recipes can be compared; " + ids.size() + " were chosen.");
    }
    List<String> slugs = new ArrayList<>();
    ids.forEach(
        id ->
            stores
                .recipes()
                .find(id.toString())
                .ifPresent(stored -> slugs.add(stored.thing().slug())));
    context.redirect("/compare?of=" + String.join(",", slugs), HttpStatus.SEE_OTHER);
  }

  /** The documents of the recipes with those of their gates and their photos, as they are read. */
  private void export(Context context, List<UUID> ids) {
    context
        .contentType("application/zip")
        .header("Cache-Control", "no-store")
        .header("Content-Disposition", "attachment; filename=\"thudbook-recipes.zip\"");
    Set<String> gates = new LinkedHashSet<>();
    Set<String> photos = new LinkedHashSet<>();
    try (DocumentZip zip = new DocumentZip(context.outputStream())) {
      for (UUID id : ids) {
        Kept<Recipe> stored = stores.recipes().find(id.toString()).orElse(null);
        if (stored != null) {
          Recipe recipe = stored.thing();
          add(zip, "recipes/" + recipe.slug(), stored.document());
          recipe.stages().stream()
              .map(StageEntry::gate)
              .filter(Objects::nonNull)
              .forEach(gates::add);
          recipe.photos().forEach(photo -> photos.add(photo.file()));
        }
      }
      Set<String> slugs = new LinkedHashSet<>();
      for (String name : gates) {
        Kept<Gate> gate = stores.gates().find(name).orElse(null);
        if (gate != null && slugs.add(gate.thing().slug())) {
          add(zip, "gates/" + gate.thing().slug(), gate.document());
        }
      }
      for (String file : photos) {
        Picture picture = stores.photos().picture(file).orElse(null);
        if (picture != null) {
          zip.add("media/" + file, picture.open());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void add(DocumentZip zip, String name, String document) throws IOException {
    byte[] text = document.getBytes(StandardCharsets.UTF_8);
    zip.add(name + ".md", new ByteArrayInputStream(text));
  }

  private static Refusal refused(String code, String message) {
    return Refusal.of(Refusal.Kind.REFUSED_VALUES, code, message);
  }
}
