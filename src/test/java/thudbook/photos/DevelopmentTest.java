package thudbook.photos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static thudbook.photos.Pictures.concat;
import static thudbook.photos.Pictures.jpeg;
import static thudbook.photos.Pictures.png;
import static thudbook.photos.Pictures.read;
import static thudbook.photos.Pictures.withCameraNotes;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.quantities.Refusal;

/**
 * What is made of image files. Reference for the eight orientations: Exif 2.32 (CIPA DC-008), which
 * says on which visual sides row 0 and column 0 of the stored picture lie. The rest are properties.
 */
@Timeout(60)
class DevelopmentTest {
  private static final int RED = 0xff0000;
  private static final int GREEN = 0x00ff00;
  private static final int BLUE = 0x0000ff;
  private static final int WHITE = 0xffffff;

  @ParameterizedTest
  @CsvSource({
    // Where the stored top left (red), top right (green) and bottom left (blue) are to be seen.
    "1, TL, TR, BL",
    "2, TR, TL, BR",
    "3, BR, BL, TR",
    "4, BL, BR, TL",
    "5, TL, BL, TR",
    "6, TR, BR, TL",
    "7, BR, TR, BL",
    "8, BL, TL, BR"
  })
  void aPhotoIsTurnedUpright(int orientation, String red, String green, String blue) {
    Development made = Development.of(withCameraNotes(jpeg(400, 200), orientation, "at home"));
    assertThat(made.width()).isEqualTo(orientation < 5 ? 400 : 200);
    assertThat(made.height()).isEqualTo(orientation < 5 ? 200 : 400);
    BufferedImage image = read(made.picture().bytes());
    assertThat(image.getWidth()).isEqualTo(made.width());
    assertColour(image, red, RED);
    assertColour(image, green, GREEN);
    assertColour(image, blue, BLUE);
    assertColour(read(made.thumbnail().bytes()), red, RED);
  }

  private static void assertColour(BufferedImage image, String corner, int colour) {
    int x = image.getWidth() * (corner.charAt(1) == 'L' ? 1 : 3) / 4;
    int y = image.getHeight() * (corner.charAt(0) == 'T' ? 1 : 3) / 4;
    int found = image.getRGB(x, y);
    for (int shift = 0; shift < 24; shift += 8) {
      assertThat((found >> shift) & 0xff)
          .as(corner + " of the picture")
          .isBetween((colour >> shift & 0xff) - 12, (colour >> shift & 0xff) + 12);
    }
  }

  @Test
  void nothingThatACameraWroteStays() {
    String secret = "lat 51.5 lon -0.1 serial 4711";
    byte[] segment = secret.getBytes(StandardCharsets.US_ASCII);
    for (byte[] file :
        new byte[][] {
          withCameraNotes(jpeg(80, 60), 1, secret),
          Pictures.withSegment(jpeg(80, 60), 0xFE, segment),
          Pictures.withSegment(jpeg(80, 60), 0xED, segment),
          Pictures.withSegment(jpeg(80, 60), 0xE2, segment),
          concat(jpeg(80, 60), segment),
          Pictures.withText(png(80, 60), secret),
          concat(png(80, 60), segment)
        }) {
      assertThat(text(file)).contains(secret);
      Development made = Development.of(file);
      assertThat(text(made.picture().bytes())).doesNotContain(secret);
      assertThat(text(made.thumbnail().bytes())).doesNotContain(secret);
    }
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  @Test
  void whatIsKeptIsKeptAsItIsWhenItComesBack() throws IOException {
    for (byte[] file : new byte[][] {jpeg(3000, 1000), png(3000, 300), resource("lossy.webp")}) {
      Development once = Development.of(file);
      Development twice = Development.of(once.picture().bytes());
      assertThat(twice.picture().bytes()).isEqualTo(once.picture().bytes());
      assertThat(twice.format()).isEqualTo(once.format());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "100, 50, 100, 50, 100, 50",
    "2560, 1280, 2560, 1280, 480, 240",
    "5120, 2560, 2560, 1280, 480, 240",
    "500, 5000, 256, 2560, 48, 480",
    "3, 1, 3, 1, 3, 1"
  })
  void longSidesAreBoundedAndNothingIsMadeLarger(
      int width, int height, int keptWidth, int keptHeight, int smallWidth, int smallHeight) {
    for (byte[] file : new byte[][] {jpeg(width, height), png(width, height)}) {
      Development made = Development.of(file);
      assertThat(new int[] {made.width(), made.height()}).containsExactly(keptWidth, keptHeight);
      BufferedImage kept = read(made.picture().bytes());
      assertThat(new int[] {kept.getWidth(), kept.getHeight()})
          .containsExactly(keptWidth, keptHeight);
      BufferedImage small = read(made.thumbnail().bytes());
      assertThat(new int[] {small.getWidth(), small.getHeight()})
          .containsExactly(smallWidth, smallHeight);
    }
  }

  @Test
  void aPhotoOfFortyMillionPixelsIsTaken() {
    Development made =
        Development.of(
            Pictures.written(Pictures.quarters(7300, 5400, BufferedImage.TYPE_3BYTE_BGR), "jpeg"));
    assertThat(made.width()).isEqualTo(2560);
    assertColour(read(made.picture().bytes()), "TR", GREEN);
    assertColour(read(made.picture().bytes()), "BR", WHITE);
  }

  @Test
  void webpBecomesJpegOrPngWhereItIsTransparent() throws IOException {
    Development lossy = Development.of(resource("lossy.webp"));
    assertThat(lossy.format()).isEqualTo(Photo.Format.JPG);
    assertThat(lossy.width()).isEqualTo(64);
    assertThat(lossy.height()).isEqualTo(48);
    Development seeThrough = Development.of(resource("see-through.webp"));
    assertThat(seeThrough.format()).isEqualTo(Photo.Format.PNG);
    BufferedImage image = read(seeThrough.picture().bytes());
    assertThat(image.getRGB(0, 0) >>> 24).isZero();
    assertThat(image.getRGB(20, 15) >>> 24).isBetween(190, 215);
  }

  @Test
  void greyDeepAndIndexedPicturesAreTaken() {
    for (int type :
        new int[] {
          BufferedImage.TYPE_BYTE_GRAY,
          BufferedImage.TYPE_USHORT_GRAY,
          BufferedImage.TYPE_BYTE_INDEXED,
          BufferedImage.TYPE_BYTE_BINARY,
          BufferedImage.TYPE_INT_ARGB
        }) {
      byte[] file = Pictures.written(Pictures.quarters(60, 40, type), "png");
      assertThat(Development.of(file).width()).isEqualTo(60);
    }
  }

  static Stream<byte[]> noPhotos() {
    byte[] gif = "GIF89a".getBytes(StandardCharsets.US_ASCII);
    byte[] svg = "<svg onload='alert(1)'/>".getBytes(StandardCharsets.US_ASCII);
    return Stream.of(
        new byte[0],
        new byte[] {(byte) 0xff},
        new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff},
        gif,
        svg,
        Arrays.copyOf(jpeg(200, 200), 700),
        Arrays.copyOf(png(200, 200), 300),
        Arrays.copyOf(png(20, 20), 8),
        concat(Arrays.copyOf(jpeg(20, 20), 4), new byte[5000]),
        Pictures.pngOfSize(100, 100),
        Pictures.pngOfSize(0, 0),
        Pictures.pngOfSize(-1, 5),
        "RIFF\u0010\0\0\0WEBPVP8 \0\0\0\0".getBytes(StandardCharsets.ISO_8859_1),
        "RIFF\u0010\0\0\0WAVEfmt \0\0\0\0".getBytes(StandardCharsets.ISO_8859_1));
  }

  @ParameterizedTest
  @MethodSource("noPhotos")
  void whatIsNoPhotoIsRefused(byte[] file) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> Development.of(file));
    assertThat(refusal).isNotNull();
    assertThat(refusal.kind()).isEqualTo(Refusal.Kind.REFUSED_VALUES);
  }

  @Test
  void tooManyPixelsAreRefusedBeforeTheyAreRead() {
    for (byte[] file :
        new byte[][] {Pictures.pngOfSize(50_000, 50_000), Pictures.pngOfSize(8001, 5000)}) {
      Refusal refusal = catchThrowableOfType(Refusal.class, () -> Development.of(file));
      assertThat(refusal.kind()).isEqualTo(Refusal.Kind.TOO_LARGE);
    }
  }

  /** Good files with bytes changed are developed or refused, and nothing else happens. */
  @Test
  void brokenFilesAreTakenOrRefused() throws IOException {
    Random random = new Random(7);
    byte[][] good = {
      withCameraNotes(jpeg(60, 40), 6, "x"),
      png(60, 40),
      resource("lossy.webp"),
      resource("see-through.webp")
    };
    int refused = 0;
    for (int i = 0; i < 800; i++) {
      byte[] file = good[i % good.length].clone();
      for (int n = 1 + random.nextInt(4); n > 0; n--) {
        file[random.nextInt(file.length)] = (byte) random.nextInt(256);
      }
      if (random.nextInt(5) == 0) {
        file = Arrays.copyOf(file, random.nextInt(file.length));
      }
      try {
        assertThat(Development.of(file).width()).isPositive();
      } catch (Refusal refusal) {
        refused++;
      }
    }
    assertThat(refused).isBetween(1, 799);
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream in = DevelopmentTest.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }
}
