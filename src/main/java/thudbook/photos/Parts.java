package thudbook.photos;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * The parts of an image file.
 *
 * @param whole whether the file has its end: one that was cut off is not a photo
 * @param plain whether it holds nothing but what the picture needs: no words, places, previews or
 *     appendices
 */
record Parts(boolean whole, boolean plain) {
  /** Chunks that PNG cannot do without, and transparency. Source: W3C PNG, 5.6. */
  private static final Set<String> PLAIN_CHUNKS = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

  private static final int START_OF_SCAN = 0xDA;
  private static final int END = 0xD9;
  private static final int JFIF = 0xE0;
  private static final int ADOBE = 0xEE;
  private static final int LAST_OF_PROGRAMS = 0xEF;
  private static final int COMMENT = 0xFE;

  /** The longest JFIF segment without a preview: header, version, density. */
  private static final int JFIF_BYTES = 16;

  private static final int ADOBE_BYTES = 14;

  static Parts of(ImageType type, byte[] bytes) {
    return switch (type) {
      case JPEG -> ofJpeg(bytes);
      case PNG -> ofPng(bytes);
      case WEBP -> new Parts(little(bytes, 4) + 8L <= bytes.length, false);
    };
  }

  /** Walks from marker to marker. Source: ITU-T T.81, annex B. */
  private static Parts ofJpeg(byte[] bytes) {
    boolean plain = true;
    int at = 2;
    while (at + 3 < bytes.length || (at + 1 < bytes.length && (bytes[at + 1] & 0xff) == END)) {
      if ((bytes[at] & 0xff) != 0xff) {
        return new Parts(false, false);
      }
      int marker = bytes[at + 1] & 0xff;
      if (marker == 0xff) {
        at++; // a filling byte
        plain = false;
        continue;
      }
      if (marker == END) {
        return new Parts(true, plain && at + 2 == bytes.length);
      }
      int length = Short.toUnsignedInt(ByteBuffer.wrap(bytes).getShort(at + 2));
      boolean words = (marker >= JFIF && marker <= LAST_OF_PROGRAMS) || marker == COMMENT;
      boolean needed =
          (marker == JFIF && length == JFIF_BYTES) || (marker == ADOBE && length == ADOBE_BYTES);
      plain &= !words || needed;
      at += 2 + length;
      if (marker == START_OF_SCAN) {
        at = behindScan(bytes, at);
      }
    }
    return new Parts(false, false);
  }

  /** The next marker behind compressed data, in which 0xff is followed by 0 or a restart. */
  private static int behindScan(byte[] bytes, int from) {
    int at = from;
    while (at + 1 < bytes.length) {
      int next = bytes[at + 1] & 0xff;
      if ((bytes[at] & 0xff) == 0xff && next != 0 && (next < 0xD0 || next > 0xD7)) {
        return at;
      }
      at++;
    }
    return at;
  }

  /** Walks from chunk to chunk. Source: W3C PNG, 5.3. */
  private static Parts ofPng(byte[] bytes) {
    boolean plain = true;
    long at = 8;
    while (at + 12 <= bytes.length) {
      int start = (int) at;
      long length = big(bytes, start);
      String name = new String(bytes, start + 4, 4, StandardCharsets.ISO_8859_1);
      plain &= PLAIN_CHUNKS.contains(name);
      at += 12 + length;
      if (name.equals("IEND")) {
        return new Parts(at <= bytes.length, plain && at == bytes.length);
      }
    }
    return new Parts(false, false);
  }

  private static long big(byte[] bytes, int at) {
    return Integer.toUnsignedLong(ByteBuffer.wrap(bytes).getInt(at));
  }

  private static long little(byte[] bytes, int at) {
    return Integer.toUnsignedLong(ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(at));
  }
}
