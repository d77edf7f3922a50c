package thudbook.documents.tree;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import thudbook.quantities.Refusal;

/** Bytes to text, strictly: nothing is replaced, nothing is guessed. */
public final class Utf8 {
  /** The longest document in bytes. */
  public static final int LONGEST = 256 * 1024;

  private Utf8() {}

  /**
   * Decodes UTF-8, with or without a byte order mark.
   *
   * @throws Refusal if it is longer than 256 KiB or not UTF-8
   */
  static String decode(byte[] bytes) {
    if (bytes.length > LONGEST) {
      throw tooLong();
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), out, true);
    out.flip();
    if (result.isError()) {
      int line = 1 + (int) out.chars().filter(c -> c == '\n').count();
      Faults faults = new Faults();
      faults.say(
          new Place(line, ""), "not-utf-8", "", "UTF-8", "line " + line + " is not UTF-8 text");
      throw faults.refusal(Refusal.Kind.MALFORMED);
    }
    String text = out.toString();
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  /** The refusal of a document that is too long. */
  public static Refusal tooLong() {
    return Refusal.of(
        Refusal.Kind.TOO_LARGE,
        "too-large",
        "a document has at most 256 KiB, the notes at most 64 KiB of them");
  }
}
