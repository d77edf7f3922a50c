package thudbook.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import net.coobird.thumbnailator.Thumbnails;
import thudbook.quantities.Refusal;

/**
 * Makes a photo to be kept of a file that somebody sent: the picture in its pixels, upright, and
 * nothing else. A file that is already such a photo stays as it is, byte for byte.
 *
 * @param picture the file that is kept
 */
record Development(Photo.Format format, int width, int height, Picture picture, Picture thumbnail) {
  /** More pixels than a camera of a telephone makes are refused before they are read. */
  static final long MOST_PIXELS = 40_000_000;

  /** A larger picture is read in every second or third row and column, so that it fits memory. */
  private static final long MOST_PIXELS_AT_ONCE = 12_000_000;

  /** The reader of this type can't leave pixels out. */
  private static final long MOST_WEBP_PIXELS = 16_800_000;

  private static final float JPEG_QUALITY = 0.9f;

  /**
   * Develops a file.
   *
   * @throws Refusal if it is no photo, is damaged or has too many pixels
   */
  static Development of(byte[] bytes) {
    ImageType type = ImageType.of(bytes).orElseThrow(Development::noPhoto);
    Parts parts = Parts.of(type, bytes);
    if (!parts.whole()) {
      throw damaged();
    }
    try {
      Read source = read(type, bytes);
      BufferedImage read = source.image();
      boolean transparent = type != ImageType.JPEG && isTransparent(read);
      Photo.Format format =
          type == ImageType.PNG || transparent ? Photo.Format.PNG : Photo.Format.JPG;
      boolean asItIs = parts.plain() && source.longerSide() <= Photo.LONGEST_SIDE;
      BufferedImage upright =
          Orientation.of(bytes).upright(within(Photo.LONGEST_SIDE, plain(read, transparent)));
      return new Development(
          format,
          upright.getWidth(),
          upright.getHeight(),
          asItIs ? Picture.of(bytes) : written(upright, format),
          written(within(Photo.LONGEST_THUMBNAIL_SIDE, upright), format));
    } catch (IOException | RuntimeException e) {
      // Readers say in many ways that they can't; a refusal of ours is passed on.
      throw e instanceof Refusal refusal ? refusal : damaged();
    }
  }

  /**
   * What was read of a file.
   *
   * @param longerSide of the picture in the file, of which not every pixel may have been read
   */
  private record Read(BufferedImage image, int longerSide) {}

  private static Read read(ImageType type, byte[] bytes) throws IOException {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(type.readerName());
    ImageReader reader = readers.next();
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in, false, true);
      int width = reader.getWidth(0);
      int height = reader.getHeight(0);
      long pixels = (long) width * height;
      if (pixels > (type == ImageType.WEBP ? MOST_WEBP_PIXELS : MOST_PIXELS)) {
        throw tooManyPixels();
      }
      ImageReadParam param = reader.getDefaultReadParam();
      int step = 1;
      while (pixels / ((long) step * step) > MOST_PIXELS_AT_ONCE) {
        step++;
      }
      param.setSourceSubsampling(step, step, 0, 0);
      return new Read(reader.read(0, param), Math.max(width, height));
    } finally {
      reader.dispose();
    }
  }

  private static boolean isTransparent(BufferedImage image) {
    if (!image.getColorModel().hasAlpha()) {
      return false;
    }
    int[] row = new int[image.getWidth()];
    for (int y = 0; y < image.getHeight(); y++) {
      image.getRGB(0, y, row.length, 1, row, 0, row.length);
      for (int pixel : row) {
        if (pixel >>> 24 != 0xff) {
          return true;
        }
      }
    }
    return false;
  }

  /** The same picture in the usual colours, whatever profile and depth it came with. */
  private static BufferedImage plain(BufferedImage image, boolean transparent) {
    int type = transparent ? BufferedImage.TYPE_INT_ARGB : BufferedImage.TYPE_INT_RGB;
    if (image.getType() == type) {
      return image;
    }
    BufferedImage plain = new BufferedImage(image.getWidth(), image.getHeight(), type);
    Graphics2D drawing = plain.createGraphics();
    try {
      if (!transparent) {
        drawing.setColor(Color.WHITE);
        drawing.fillRect(0, 0, image.getWidth(), image.getHeight());
      }
      drawing.drawImage(image, 0, 0, null);
    } finally {
      drawing.dispose();
    }
    return plain;
  }

  private static BufferedImage within(int side, BufferedImage image) throws IOException {
    return longer(image) <= side
        ? image
        : Thumbnails.of(image).size(side, side).imageType(image.getType()).asBufferedImage();
  }

  private static int longer(BufferedImage image) {
    return Math.max(image.getWidth(), image.getHeight());
  }

  private static Picture written(BufferedImage image, Photo.Format format) throws IOException {
    String name = format == Photo.Format.JPG ? "jpeg" : "png";
    ImageWriter writer = ImageIO.getImageWritersByFormatName(name).next();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      writer.setOutput(stream);
      ImageWriteParam param = writer.getDefaultWriteParam();
      if (format == Photo.Format.JPG) {
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionQuality(JPEG_QUALITY);
      }
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return Picture.of(out.toByteArray());
  }

  private static Refusal noPhoto() {
    return Refusal.of(
        Refusal.Kind.REFUSED_VALUES,
        "not-a-photo",
        "This is not a photo in JPEG, PNG or WebP, whatever its name says.");
  }

  private static Refusal damaged() {
    return Refusal.of(
        Refusal.Kind.REFUSED_VALUES,
        "damaged-photo",
        "This photo can't be read: it is damaged, or a part of it is missing.");
  }

  private static Refusal tooManyPixels() {
    return Refusal.of(
        Refusal.Kind.TOO_LARGE,
        "too-many-pixels",
        "A photo has at most 40 million pixels, a WebP 16 million: make it smaller first.");
  }
}
