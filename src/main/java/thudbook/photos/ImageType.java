package thudbook.photos;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The kinds of image file that are taken, told apart by their first bytes, whatever their name. */
enum ImageType {
  JPEG("jpeg"),
  PNG("png"),
  WEBP("webp");

  private static final int PNG_SIGNATURE_BYTES = 8;
  private static final int RIFF_HEADER_BYTES = 12;

  private final String readerName;

  ImageType(String readerName) {
    this.readerName = readerName;
  }

  /** The name under which the platform lists readers of it. */
  String readerName() {
    return readerName;
  }

  /** The type of a file. Sources: ITU-T T.81; W3C PNG, 5.2; RFC 9649, 2.3. */
  static Optional<ImageType> of(byte[] bytes) {
    if (startsWith(bytes, 0, "\u00ff\u00d8\u00ff")) {
      return Optional.of(JPEG);
    }
    if (bytes.length > PNG_SIGNATURE_BYTES && startsWith(bytes, 0, "\u0089PNG\r\n\u001a\n")) {
      return Optional.of(PNG);
    }
    return bytes.length > RIFF_HEADER_BYTES
            && startsWith(bytes, 0, "RIFF")
            && startsWith(bytes, PNG_SIGNATURE_BYTES, "WEBP")
        ? Optional.of(WEBP)
        : Optional.empty();
  }

  private static boolean startsWith(byte[] bytes, int from, String start) {
    byte[] expected = start.getBytes(StandardCharsets.ISO_8859_1);
    if (bytes.length < from + expected.length) {
      return false;
    }
    for (int i = 0; i < expected.length; i++) {
      if (bytes[from + i] != expected[i]) {
        return false;
      }
    }
    return true;
  }
}
