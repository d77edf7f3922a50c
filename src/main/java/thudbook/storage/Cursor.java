package thudbook.storage;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.List;
import thudbook.library.RecipeList.Request;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * The row after which a page begins. As text it carries what was searched for, so that it is
 * refused by any other search.
 *
 * @param changedAt of the row, where the list is by time; else 0
 * @param titleKey of the row, where the list is by title; else empty
 * @param recipe key of the row, which decides between rows that are otherwise equal
 */
record Cursor(long changedAt, String titleKey, long recipe) {
  private static final int FORM = 1;

  /** The cursor as opaque text that goes into an address unescaped. */
  String text(Request search) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeByte(FORM);
      out.writeUTF(nameOf(search));
      out.writeLong(changedAt);
      out.writeUTF(titleKey);
      out.writeLong(recipe);
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
  static Cursor read(String text, Request search) {
    try (DataInputStream in =
        new DataInputStream(new ByteArrayInputStream(Base64.getUrlDecoder().decode(text)))) {
      if (in.readByte() == FORM && in.readUTF().equals(nameOf(search))) {
        Cursor cursor = new Cursor(in.readLong(), in.readUTF(), in.readLong());
        if (in.read() < 0) {
          return cursor;
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

  private static String nameOf(Request search) {
    String tag = search.tag();
    return search.order() + (tag == null ? "" : " " + Folding.fold(tag));
  }
}
