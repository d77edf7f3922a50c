package thudbook.photos;

import java.util.Locale;
import java.util.regex.Pattern;
import thudbook.quantities.Check;

/**
 * A photo as it is kept.
 *
 * @param sha256 of its bytes, in lower-case hexadecimal digits
 * @param width in pixels
 * @param height in pixels
 */
public record Photo(String sha256, Format format, int width, int height) {
  /** The longest side of a photo that is kept, in pixels. */
  public static final int LONGEST_SIDE = 2560;

  /** The longest side of its thumbnail, in pixels. */
  public static final int LONGEST_THUMBNAIL_SIDE = 480;

  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

  public Photo {
    if (!HASH.matcher(sha256).matches()) {
      throw new IllegalArgumentException("a SHA-256 was expected, found " + sha256);
    }
    Check.inRange("width", width, 1, LONGEST_SIDE);
    Check.inRange("height", height, 1, LONGEST_SIDE);
  }

  /** What a photo is kept as. */
  public enum Format {
    JPG("image/jpeg"),
    PNG("image/png");

    private final String mediaType;

    Format(String mediaType) {
      this.mediaType = mediaType;
    }

    /** Its media type. */
    public String mediaType() {
      return mediaType;
    }

    /** The ending of a file of it, without the dot. */
    public String ending() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Its name in documents and addresses: the hash, a dot and its ending. */
  public String file() {
    return sha256 + "." + format.ending();
  }
}
