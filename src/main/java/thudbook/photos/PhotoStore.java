package thudbook.photos;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Where photos are kept. */
public interface PhotoStore {
  /** Keeps a photo, unless it is there already. */
  void keep(Photo photo, Picture picture, Picture thumbnail, Instant at);

  /** The photo of a name such as {@code 3f9a….jpg}. */
  Optional<Photo> find(String file);

  /** The picture of a photo. */
  Optional<Picture> picture(String file);

  /** The thumbnail of a photo. */
  Optional<Picture> thumbnail(String file);

  /**
   * The names of photos in alphabetical order.
   *
   * @param after only names behind this one; empty: from the first on
   */
  List<String> files(String after, int limit);
}
