package thudbook.photos;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.InstantSource;
import java.util.HexFormat;
import thudbook.quantities.Refusal;

/** What can be done with photos. */
public final class Photos {
  private final PhotoStore store;
  private final InstantSource clock;
  private final Object oneAtATime = new Object();

  /** Keeps photos in a store. */
  public Photos(PhotoStore store, InstantSource clock) {
    this.store = store;
    this.clock = clock;
  }

  /**
   * Keeps the photo in a file that somebody sent. The same file is kept once.
   *
   * @return the photo as it is kept, which has other bytes than the file, mostly fewer
   * @throws Refusal if it is not a JPEG, PNG or WebP, whatever its name says, is damaged or has too
   *     many pixels
   */
  public Photo add(byte[] file) {
    Development development;
    // A photo that is being read takes much memory for a moment.
    synchronized (oneAtATime) {
      development = Development.of(file);
    }
    Photo photo =
        new Photo(
            sha256(development.picture()),
            development.format(),
            development.width(),
            development.height());
    store.keep(photo, development.picture(), development.thumbnail(), clock.instant());
    return photo;
  }

  private static String sha256(Picture picture) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(picture.bytes()));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
