package thudbook.photos;

import java.io.ByteArrayInputStream;
import java.io.InputStream;

/** The bytes of an image file. They never change. */
public final class Picture {
  private final byte[] bytes;

  private Picture(byte[] bytes) {
    this.bytes = bytes;
  }

  /** A picture of these bytes. */
  public static Picture of(byte[] bytes) {
    return new Picture(bytes.clone());
  }

  /** How many bytes there are. */
  public int length() {
    return bytes.length;
  }

  /** The bytes from the first on. */
  public InputStream open() {
    return new ByteArrayInputStream(bytes);
  }

  /** A copy of the bytes. */
  public byte[] bytes() {
    return bytes.clone();
  }
}
