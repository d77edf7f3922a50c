package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;
import thudbook.photos.Pictures;

/** Photos over HTTP, on a real file. Scenario tests. */
class MediaTest {
  private static final String BOUNDARY = "line-between-parts";

  @TempDir static Path folder;
  private static ServedNotebook notebook;
  private static int port;

  @BeforeAll
  static void open() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of("upload-limit", "200 kB"));
    port = notebook.port();
  }

  @AfterAll
  static void close() {
    notebook.close();
  }

  private static Exchange post(byte[] body, String type) {
    return Exchange.request(port, "POST", "/api/media").body(type, body);
  }

  private static byte[] multipart(String field, String name, byte[] content) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    String disposition = "form-data; name=\"" + field + "\"; filename=\"" + name + "\"";
    String head =
        "--"
            + BOUNDARY
            + "\r\nContent-Disposition: "
            + disposition
            + "\r\nContent-Type: image/jpeg";
    body.writeBytes((head + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
    body.writeBytes(content);
    body.writeBytes(("\r\n--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return body.toByteArray();
  }

  @Test
  void aPhotoGoesInComesOutAndIsKeptOnce() throws IOException {
    byte[] file = Pictures.withCameraNotes(Pictures.jpeg(900, 600), 6, "lat 51.5");
    Answer added = post(file, "image/jpeg").send();
    assertThat(added.status()).isEqualTo(201);
    JsonNode photo = new ObjectMapper().readTree(added.bytes());
    assertThat(photo.get("width").asInt()).isEqualTo(600);
    assertThat(photo.get("height").asInt()).isEqualTo(900);
    String address = "/api/media/" + photo.get("file").asText();
    assertThat(added.header("Location")).isEqualTo(address);
    assertThat(post(file, "image/png").send().text()).isEqualTo(added.text());

    Answer picture = Exchange.get(port, address);
    assertThat(picture.status()).isEqualTo(200);
    assertThat(picture.header("Content-Type")).isEqualTo("image/jpeg");
    assertThat(picture.header("Cache-Control")).isEqualTo("public, max-age=31536000, immutable");
    assertThat(picture.header("X-Content-Type-Options")).isEqualTo("nosniff");
    assertThat(new String(picture.bytes(), StandardCharsets.ISO_8859_1)).doesNotContain("51.5");
    Answer small = Exchange.get(port, address + "/thumbnail");
    assertThat(small.header("Content-Type")).isEqualTo("image/jpeg");
    assertThat(ImageIO.read(new ByteArrayInputStream(small.bytes())).getHeight()).isEqualTo(480);
    String tag = picture.header("ETag");
    assertThat(tag).isNotEqualTo(small.header("ETag"));
    assertThat(Exchange.request(port, "GET", address).header("If-None-Match", tag).send().status())
        .isEqualTo(304);
  }

  @Test
  void aFormOfAPageIsTakenAndOneFromElsewhereIsNot() throws IOException {
    byte[] body = multipart("file", "patch.gif", Pictures.png(40, 30));
    String type = "multipart/form-data; boundary=" + BOUNDARY;
    assertThat(post(body, type).header("Origin", "http://127.0.0.1:" + port).send().status())
        .isEqualTo(201);
    assertThat(post(body, type).header("Origin", "http://elsewhere.example").send().status())
        .isEqualTo(403);
    assertThat(post(body, type).send().status()).isEqualTo(403);
    byte[] other = multipart("other", "x", Pictures.png(40, 30));
    assertThat(post(other, type).header("Origin", "http://127.0.0.1:" + port).send().status())
        .isEqualTo(422);
    Answer broken =
        post("--nothing".getBytes(StandardCharsets.UTF_8), type)
            .header("Origin", "http://127.0.0.1:" + port)
            .send();
    assertThat(broken.status()).isEqualTo(400);
  }

  @Test
  void whatIsTooLargeIsRefusedHoweverItIsSent() throws IOException {
    byte[] large = new byte[300_000];
    String type = "multipart/form-data; boundary=" + BOUNDARY;
    byte[] form = multipart("file", "large.jpg", large);
    String origin = "http://127.0.0.1:" + port;
    assertThat(post(large, "image/jpeg").send().status()).isEqualTo(413);
    assertThat(
            Exchange.request(port, "POST", "/api/media")
                .chunks("image/jpeg", large)
                .send()
                .status())
        .isEqualTo(413);
    assertThat(post(form, type).header("Origin", origin).send().status()).isEqualTo(413);
    assertThat(
            Exchange.request(port, "POST", "/api/media")
                .header("Origin", origin)
                .chunks(type, form)
                .send()
                .status())
        .isEqualTo(413);
  }

  @Test
  void whatIsNoPhotoIsRefusedWhateverItSays() throws IOException {
    byte[] script = "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8);
    assertThat(post(script, "image/jpeg").send().status()).isEqualTo(422);
    assertThat(post(Pictures.jpeg(9, 9), "text/plain").send().status()).isIn(403, 415);
    assertThat(post(Pictures.jpeg(9, 9), "application/json").send().status()).isEqualTo(415);
    assertThat(post(Pictures.pngOfSize(30_000, 30_000), "image/png").send().status())
        .isEqualTo(413);
  }

  @Test
  void anAddressWithoutAPhotoIsNotFound() throws IOException {
    String name = "0".repeat(64);
    for (String address : new String[] {"x", name + ".jpg", name, "..%2f..%2fthudbook.db"}) {
      assertThat(Exchange.get(port, "/api/media/" + address).status()).isIn(400, 404);
      assertThat(Exchange.get(port, "/api/media/" + address + "/thumbnail").status())
          .isIn(400, 404);
    }
  }
}
