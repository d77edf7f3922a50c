package thudbook.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Image files that tests make: four quarters of different colours, notes of a camera. */
public final class Pictures {
  private Pictures() {}

  /** A picture: red, green above blue, white. */
  public static BufferedImage quarters(int width, int height, int type) {
    BufferedImage image = new BufferedImage(width, height, type);
    Graphics2D drawing = image.createGraphics();
    Color[] colours = {Color.RED, Color.GREEN, Color.BLUE, Color.WHITE};
    for (int i = 0; i < 4; i++) {
      drawing.setColor(colours[i]);
      drawing.fillRect(i % 2 * width / 2, i / 2 * height / 2, (width + 1) / 2, (height + 1) / 2);
    }
    drawing.dispose();
    return image;
  }

  /** A JPEG of such a picture. */
  public static byte[] jpeg(int width, int height) {
    return written(quarters(width, height, BufferedImage.TYPE_INT_RGB), "jpeg");
  }

  /** A PNG of such a picture. */
  public static byte[] png(int width, int height) {
    return written(quarters(width, height, BufferedImage.TYPE_INT_RGB), "png");
  }

  static byte[] written(BufferedImage image, String format) {
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      if (!ImageIO.write(image, format, out)) {
        throw new AssertionError("no writer of " + format);
      }
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static BufferedImage read(byte[] file) {
    try {
      return ImageIO.read(new ByteArrayInputStream(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The file with an Exif segment behind its start: an orientation and a description. Laid out
   * after CIPA DC-008, 4.5 and 4.6: big-endian TIFF, one directory with two entries.
   */
  public static byte[] withCameraNotes(byte[] jpeg, int orientation, String description) {
    byte[] words = (description + "\0").getBytes(StandardCharsets.US_ASCII);
    ByteBuffer tiff = ByteBuffer.allocate(38 + words.length);
    tiff.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    tiff.putShort((short) 2);
    tiff.putShort((short) 0x010E).putShort((short) 2).putInt(words.length).putInt(38);
    tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1);
    tiff.putShort((short) orientation).putShort((short) 0);
    tiff.putInt(0).put(words);
    return withSegment(
        jpeg, 0xE1, concat("Exif\0\0".getBytes(StandardCharsets.US_ASCII), tiff.array()));
  }

  static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
    ByteBuffer head = ByteBuffer.allocate(6);
    head.put((byte) 0xFF).put((byte) 0xD8).put((byte) 0xFF).put((byte) marker);
    head.putShort((short) (content.length + 2));
    return concat(head.array(), content, Arrays.copyOfRange(jpeg, 2, jpeg.length));
  }

  /** A PNG that says to be so large; its data does not matter. */
  public static byte[] pngOfSize(int width, int height) {
    ByteBuffer header = ByteBuffer.allocate(13);
    header.putInt(width).putInt(height).put((byte) 8).put((byte) 2).put(new byte[3]);
    return concat(
        Arrays.copyOf(png(1, 1), 8),
        chunk("IHDR", header.array()),
        chunk("IDAT", new byte[] {0x78, (byte) 0x9c, 3, 0, 0, 0, 0, 1}),
        chunk("IEND", new byte[0]));
  }

  /** The PNG with a chunk of words in front of its last chunk. */
  static byte[] withText(byte[] png, String words) {
    int end = png.length - 12;
    return concat(
        Arrays.copyOf(png, end),
        chunk("tEXt", ("Comment\0" + words).getBytes(StandardCharsets.ISO_8859_1)),
        Arrays.copyOfRange(png, end, png.length));
  }

  static byte[] chunk(String name, byte[] content) {
    byte[] typed = concat(name.getBytes(StandardCharsets.US_ASCII), content);
    CRC32 sum = new CRC32();
    sum.update(typed);
    return concat(
        ByteBuffer.allocate(4).putInt(content.length).array(),
        typed,
        ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
  }

  static byte[] concat(byte[]... parts) {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      whole.writeBytes(part);
    }
    return whole.toByteArray();
  }
}
