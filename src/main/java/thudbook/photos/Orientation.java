package thudbook.photos;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;

/**
 * How a camera was held, as a number from 1 to 8. Source: Exif 2.32 (CIPA DC-008), tag Orientation.
 *
 * @param number 1: upright
 */
record Orientation(int number) {
  private static final Orientation UPRIGHT = new Orientation(1);

  Orientation {
    if (number < 1 || number > 8) {
      throw new IllegalArgumentException("1 to 8 was expected, found " + number);
    }
  }

  /** What the camera noted in a file; upright if it noted nothing that can be read. */
  static Orientation of(byte[] bytes) {
    try {
      Metadata metadata =
          ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes), bytes.length);
      ExifIFD0Directory camera = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
      Integer number = camera == null ? null : camera.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
      return number == null || number < 1 || number > 8 ? UPRIGHT : new Orientation(number);
    } catch (ImageProcessingException | IOException | RuntimeException e) {
      // Notes that can't be read say nothing; whether the picture can be is seen later.
      return UPRIGHT;
    }
  }

  /** The picture as the camera saw it. */
  BufferedImage upright(BufferedImage image) {
    if (number == 1) {
      return image;
    }
    int width = image.getWidth();
    int height = image.getHeight();
    boolean lying = number >= 5;
    BufferedImage turned =
        new BufferedImage(lying ? height : width, lying ? width : height, image.getType());
    Graphics2D drawing = turned.createGraphics();
    try {
      drawing.drawImage(image, transform(width, height), null);
    } finally {
      drawing.dispose();
    }
    return turned;
  }

  /** Each row of the stored picture becomes the visual side that the number names. */
  private AffineTransform transform(int width, int height) {
    return switch (number) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
      default -> new AffineTransform(0, -1, 1, 0, 0, width);
    };
  }
}
