package thudbook.library;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * Where a recipe stands in an order: what decides, then when it was saved, then its key. As the
 * text of a cursor it carries a mark of its search, so that any other search refuses it.
 *
 * @param number what decides, unless the order is by title; NaN: it has none
 * @param title folded, where the order is by title; else empty
 */
record Position(double number, String title, long changedAt, int key) {
  private static final int FORM = 2;
  private static final int MARK_LENGTH = 8;

  /** Opaque text that goes into an address unescaped. */
  String text(byte[] mark) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeByte(FORM);
      out.write(mark);
      out.writeDouble(number);
      out.writeUTF(title);
      out.writeLong(changedAt);
      out.writeInt(key);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes.toByteArray());
  }

  /**
   * Reads a cursor.
   *
   * @throws Refusal if it is none, or one of another search
   */
  static Position read(String text, byte[] mark) {
    try (DataInputStream in =
        new DataInputStream(new ByteArrayInputStream(Base64.getUrlDecoder().decode(text)))) {
      if (in.readByte() == FORM && Arrays.equals(in.readNBytes(MARK_LENGTH), mark)) {
        Position position =
            new Position(in.readDouble(), in.readUTF(), in.readLong(), in.readInt());
        if (in.read() < 0) {
          return position;
        }
      }
    } catch (IllegalArgumentException | IOException e) {
      // Not the text of a cursor: refused below like one of another search.
    }
    throw new Refusal(
        Refusal.Kind.REFUSED_VALUES,
        List.of(
            new Fault(
                "after",
                0,
                "foreign-cursor",
                text.length() <= 40 ? text : text.substring(0, 40) + "…",
                "a cursor that this search gave out",
                "The cursor is not one of this search: begin at its first page.")));
  }

  /** The mark of a search. */
  static byte[] mark(Wanted wanted, Ordering ordering) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256")
              .digest((wanted + ordering.key()).getBytes(StandardCharsets.UTF_8));
      return Arrays.copyOf(hash, MARK_LENGTH);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
