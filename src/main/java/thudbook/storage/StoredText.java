package thudbook.storage;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** What identifies stored texts and bytes. */
final class StoredText {
  private StoredText() {}

  /** The SHA-256 of the text in UTF-8, in lower-case hexadecimal digits. */
  static String sha256(String document) {
    return sha256(document.getBytes(StandardCharsets.UTF_8));
  }

  /** The SHA-256 of bytes, in lower-case hexadecimal digits. */
  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
