package thudbook.pages.writing;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.photos.Photo;
import thudbook.photos.Photos;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.Uploads;
import thudbook.web.Visitors;

/** Forms that add a photo to a recipe and take one out; each makes a revision. */
public final class PhotoRoutes {
  private static final int LONGEST_DESCRIPTION = 500;
  private static final int MOST_PHOTOS = 200;

  private final RecipeStore recipes;
  private final Keeper<Recipe> acts;
  private final Photos photos;

  /** Forms over these recipes and photos. */
  public PhotoRoutes(Stores stores, Acts acts) {
    this.recipes = stores.recipes();
    this.acts = acts.recipes();
    this.photos = acts.photos();
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config.routes.post("/recipes/{slug}/photos", this::add);
    config.routes.post("/recipes/{slug}/photos/remove", this::remove);
  }

  private void add(Context ctx) {
    Kept<Recipe> stored = found(ctx);
    List<Uploads.Sent> files = Uploads.files(ctx, "file");
    if (files.size() != 1 || files.get(0).length() == 0) {
      throw refused("no-photo", "Choose a photo first.");
    }
    String shows = Objects.requireNonNullElse(ctx.formParam("shows"), "").strip();
    if (shows.length() > LONGEST_DESCRIPTION || shows.chars().anyMatch(Character::isISOControl)) {
      throw refused(
          "bad-description",
          "What it shows is said in one line of at most " + LONGEST_DESCRIPTION + " characters.");
    }
    List<Recipe.Photo> all = new ArrayList<>(stored.thing().photos());
    if (all.size() >= MOST_PHOTOS) {
      throw refused("too-many-photos", "A recipe has at most " + MOST_PHOTOS + " photos.");
    }
    Photo photo = photos.add(Uploads.bytes(files.get(0)));
    all.removeIf(other -> other.file().equals(photo.file()));
    all.add(new Recipe.Photo(photo.file(), shows.isEmpty() ? null : shows));
    save(ctx, stored, all, "added a photo");
  }

  private void remove(Context ctx) {
    Kept<Recipe> stored = found(ctx);
    String file = ctx.formParam("file");
    save(
        ctx,
        stored,
        stored.thing().photos().stream().filter(photo -> !photo.file().equals(file)).toList(),
        "took a photo out");
  }

  private void save(Context ctx, Kept<Recipe> stored, List<Recipe.Photo> all, String what) {
    Recipe recipe = stored.thing().withPhotos(all);
    acts.change(recipe.id(), stored.version(), recipe, Visitors.of(ctx).author(), what);
    ctx.redirect("/recipes/" + recipe.slug() + "#photos", HttpStatus.SEE_OTHER);
  }

  private Kept<Recipe> found(Context ctx) {
    return recipes
        .find(ctx.pathParam("slug"))
        .orElseThrow(
            () ->
                Refusal.of(
                    Refusal.Kind.NOT_FOUND,
                    "not-found",
                    "The notebook has no recipe of this name."));
  }

  private static Refusal refused(String code, String message) {
    return Refusal.of(Refusal.Kind.REFUSED_VALUES, code, message);
  }
}
