package thudbook.pages.reading;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.photos.Photo;
import thudbook.photos.PhotoStore;
import thudbook.recipes.Recipe;

/**
 * A photo of a recipe, as it is shown.
 *
 * @param file its name
 * @param shows null: nobody has said
 * @param width of its thumbnail in pixels; 0: the notebook does not have it
 * @param height likewise
 */
public record PhotoView(String file, @Nullable String shows, int width, int height) {
  /** The photos that a recipe names. */
  public static List<PhotoView> all(Recipe recipe, PhotoStore photos) {
    return recipe.photos().stream()
        .map(
            named ->
                photos
                    .find(named.file())
                    .map(photo -> of(named, photo))
                    .orElseGet(() -> new PhotoView(named.file(), named.shows(), 0, 0)))
        .toList();
  }

  private static PhotoView of(Recipe.Photo named, Photo photo) {
    double shrunk =
        Math.min(
            1, Photo.LONGEST_THUMBNAIL_SIDE / (double) Math.max(photo.width(), photo.height()));
    return new PhotoView(
        named.file(),
        named.shows(),
        (int) Math.max(1, Math.round(photo.width() * shrunk)),
        (int) Math.max(1, Math.round(photo.height() * shrunk)));
  }

  /** Whether the notebook has it. */
  public boolean isHere() {
    return width > 0;
  }

  /** Where the whole photo is. */
  public String address() {
    return "/api/media/" + file;
  }

  /** Where its thumbnail is. */
  public String thumbnail() {
    return address() + "/thumbnail";
  }

  /** What stands below it. */
  public String caption() {
    return shows == null ? "Nobody has said what this shows" : shows;
  }

  /** What a reader hears who can't see it. */
  public String alternative() {
    return shows == null ? "A photo of the patch without a description" : shows;
  }
}
