package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange.Answer;
import thudbook.photos.Pictures;
import thudbook.storage.Database;

/**
 * Scenario: 300 seeded hostile inputs over documents, tables, zips and photos, sent as a browser
 * sends them. Each is refused or shown harmlessly, none writes anything before a word is said, and
 * none takes more than the memory of a small server.
 */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class HostileInputsTest {
  private static final int INPUTS = 300;
  private static final String BOUNDARY = "line-between-parts";
  private static final String SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(2)>";
  private static final String[] PATHS = {
    "../../etc/passwd.md",
    "/etc/cron.d/x.md",
    "C:\\windows\\x.md",
    "a/../../b.md",
    "..\\x.md",
    "a\u0000b.md",
    "x\u202Edm.exe.md",
    "n".repeat(400) + ".md"
  };

  @TempDir static Path folder;
  private static ServedNotebook notebook;
  private static int port;

  private final Random random = new Random(31_337);

  @BeforeAll
  static void open() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of("upload-limit", "4 MB", "keep-backups", "0"));
    port = notebook.port();
  }

  @AfterAll
  static void close() {
    notebook.close();
  }

  /** A file as its sender calls it. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Sent(String name, byte[] bytes) {}

  @Test
  void eachIsRefusedOrShownHarmlesslyAndNothingIsWritten() throws IOException {
    String before = state();
    long most = 0;
    int refused = 0;
    for (int i = 0; i < INPUTS; i++) {
      Sent sent = hostile(i);
      Answer answer = share(sent);
      if (answer.status() == 303) {
        answer = Exchange.get(port, answer.header("Location"));
        assertThat(answer.status()).isEqualTo(200);
      } else {
        assertThat(answer.status()).as(sent.name()).isIn(400, 413, 422);
        refused++;
      }
      assertHarmless(answer);
      if (i % 4 == 3) {
        assertPhotoIsRefusedOrCleaned(sent.bytes());
      }
      most = Math.max(most, used());
    }
    assertThat(refused).isBetween(INPUTS / 2, INPUTS - 1);
    assertThat(state()).isEqualTo(before);
    assertThat(Database.verify(folder).wrong()).isEmpty();
    assertThat(most).as("bytes in use after a collection").isLessThan(200L << 20);
  }

  /** What is in the notebook, as far as anybody can see. */
  private static String state() throws IOException {
    return Exchange.get(port, "/api/recipes?limit=200").text()
        + Exchange.get(port, "/api/gates").text()
        + Exchange.get(port, "/api/changes").text();
  }

  private static long used() {
    Runtime memory = Runtime.getRuntime();
    if (memory.totalMemory() - memory.freeMemory() > 200L << 20) {
      System.gc();
    }
    return memory.totalMemory() - memory.freeMemory();
  }

  private static void assertHarmless(Answer answer) {
    assertThat(answer.header("Content-Security-Policy")).contains("script-src 'self'");
    assertThat(answer.text())
        .doesNotContain("<script>alert", "<img src=x", "Exception", "java.", "thudbook.doc")
        .doesNotContain(folder.toString());
  }

  private void assertPhotoIsRefusedOrCleaned(byte[] bytes) throws IOException {
    Answer answer = Exchange.request(port, "POST", "/api/media").body("image/jpeg", bytes).send();
    assertThat(answer.status()).isIn(201, 413, 422);
  }

  private Sent hostile(int number) {
    String path = PATHS[random.nextInt(PATHS.length)];
    return switch (number % 12) {
      case 0 -> new Sent("x.zip", zip(path, document("Path tricks")));
      case 1 -> new Sent("bomb.zip", zip("a.md", new byte[200_000 + random.nextInt(9_000_000)]));
      case 2 -> new Sent("nested.zip", zip("in.zip", zip("a.md", new byte[3_000_000])));
      case 3 -> new Sent("photo.jpg", brokenPhoto());
      case 4 -> new Sent("cut.zip", cut(zip("a.md", document("Cut off"))));
      case 5 -> new Sent("x.md", spoiled(document("Bad UTF-8")));
      case 6 -> new Sent(SCRIPT + ".md", document(SCRIPT));
      case 7 ->
          new Sent("t.csv", text("title,heard,decay (ms)\n" + SCRIPT + "," + SCRIPT + ",9e9\n"));
      case 8 -> new Sent("t.csv", text("title\n\"" + "x".repeat(random.nextInt(400_000))));
      case 9 -> new Sent("x.md", text(deep()));
      case 10 -> new Sent("media/" + "0".repeat(64) + ".png", text(SCRIPT));
      default -> new Sent("many.zip", many());
    };
  }

  private byte[] document(String title) {
    String quoted = "\"" + title + "\"";
    return text(
        "---\nthudbook: recipe/1\ntitle: "
            + quoted
            + "\nheard: "
            + quoted
            + "\nby: "
            + quoted
            + "\ntags: ["
            + (title.length() > 40 ? "x" : quoted)
            + "]\nroom: "
            + quoted
            + "\nconnections: [{out: "
            + quoted
            + ", in: "
            + quoted
            + "}]\n---\n"
            + title
            + " [x](javascript:alert(1)) ![y](data:text/html,z)\n");
  }

  private String deep() {
    String piece = new String[] {"[", "{a: ", "- ", "&a [*a, "}[random.nextInt(4)];
    return "---\nthudbook: recipe/1\ntitle: " + piece.repeat(20_000) + "\n---\n";
  }

  private byte[] brokenPhoto() {
    byte[] good =
        random.nextBoolean()
            ? Pictures.withCameraNotes(Pictures.jpeg(90, 60), 9, SCRIPT)
            : Pictures.pngOfSize(1 + random.nextInt(60_000), 1 + random.nextInt(60_000));
    return random.nextBoolean() ? cut(good) : spoiled(good);
  }

  private byte[] cut(byte[] bytes) {
    return Arrays.copyOf(bytes, 4 + random.nextInt(bytes.length - 4));
  }

  private byte[] spoiled(byte[] bytes) {
    byte[] spoiled = bytes.clone();
    for (int n = 1 + random.nextInt(5); n > 0; n--) {
      spoiled[4 + random.nextInt(bytes.length - 4)] = (byte) (0x80 + random.nextInt(0x40));
    }
    return spoiled;
  }

  private static byte[] zip(String name, byte[] content) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      zip.putNextEntry(new ZipEntry(name));
      zip.write(content);
      zip.closeEntry();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] many() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (int i = 0; i < 10_100; i++) {
        zip.putNextEntry(new ZipEntry("d/" + i + ".md"));
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Answer share(Sent sent) throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    String name = sent.name().replace("\"", "%22").replace("\u0000", "");
    String disposition = "form-data; name=\"files\"; filename=\"" + name + "\"";
    body.writeBytes(text("--" + BOUNDARY + "\r\nContent-Disposition: " + disposition + "\r\n\r\n"));
    body.writeBytes(sent.bytes());
    body.writeBytes(text("\r\n--" + BOUNDARY + "--\r\n"));
    return Exchange.request(port, "POST", "/share/imports")
        .header("Origin", "http://127.0.0.1:" + port)
        .body("multipart/form-data; boundary=" + BOUNDARY, body.toByteArray())
        .send();
  }
}
