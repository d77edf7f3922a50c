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

  /** A photo that is ready to be kept. */
  public record Ready(Photo photo, Picture picture, Picture thumbnail) {}

  /**
   * Keeps the photo in a file that somebody sent. The same file is kept once.
   *
   * @return the photo as it is kept, which has other bytes than the file, mostly fewer
   * @throws Refusal as {@link #prepare} does
   */
  public Photo add(byte[] file) {
    Ready ready = prepare(file);
    keep(ready);
    return ready.photo();
  }

  /**
   * Makes a photo of a file that somebody sent, and keeps nothing yet.
   *
   * @throws Refusal if it is not a JPEG, PNG or WebP, whatever its name says, is damaged or has too
   *     many pixels
   */
  public Ready prepare(byte[] file) {
    Development made;
    // A photo that is being read takes much memory for a moment.
    synchronized (oneAtATime) {
      made = Development.of(file);
    }
    Photo photo =
        new Photo(sha256(made.picture().bytes()), made.format(), made.width(), made.height());
    return new Ready(photo, made.picture(), made.thumbnail());
  }

  /** Keeps a photo. */
  public void keep(Ready ready) {
    store.keep(ready.photo(), ready.picture(), ready.thumbnail(), clock.instant());
  }

  /** The SHA-256 of bytes, in lower-case hexadecimal digits. */
  public static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
