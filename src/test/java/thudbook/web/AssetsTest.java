package thudbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import thudbook.Exchange;
import thudbook.Exchange.Answer;

/** How files are addressed, kept and squeezed. Scenario tests. */
class AssetsTest {
  private static final String STYLE =
      "@font-face { src: url(\"/lib/inter/a.woff2\") }\n" + "p { color: black }\n".repeat(100);
  private static final String FOR_EVER = "public, max-age=31536000, immutable";

  private static Assets assets;
  private static Server server;

  private static Assets assets(String script) {
    return new Assets(
        Map.of("site.css", bytes(STYLE), "plot/cursor.js", bytes(script)),
        path -> path.equals("inter/a.woff2") ? Optional.of(bytes("font")) : Optional.empty());
  }

  @BeforeAll
  static void start() throws IOException {
    assets = assets("export {}");
    server =
        Server.start(
            new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 1_000),
            (kind, faults, requestId) -> kind.slug(),
            () -> "",
            assets::addTo);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Answer get(String target) throws IOException {
    return Exchange.get(server.port(), target);
  }

  @Test
  void underItsAddressAFileIsKeptForEver() throws IOException {
    Answer style = get(assets.address("site.css"));
    assertThat(style.status()).isEqualTo(200);
    assertThat(style.header("Cache-Control")).isEqualTo(FOR_EVER);
    assertThat(style.header("Content-Type")).isEqualTo("text/css; charset=utf-8");
    Answer font = get(assets.address("lib/inter/a.woff2"));
    assertThat(font.header("Cache-Control")).isEqualTo(FOR_EVER);
    assertThat(font.header("Content-Type")).isEqualTo("font/woff2");
    assertThat(font.text()).isEqualTo("font");
  }

  @Test
  void importsOfAScriptCarryTheHashToo() throws IOException {
    String site = assets.address("site.css");
    String cursor = assets.address("plot/cursor.js");
    assertThat(cursor).isEqualTo(site.replace("site.css", "plot/cursor.js"));
    assertThat(get(cursor).header("Content-Type")).isEqualTo("text/javascript; charset=utf-8");
  }

  @Test
  void anyChangeChangesTheAddresses() {
    assertThat(assets("export {};").address("site.css")).isNotEqualTo(assets.address("site.css"));
    assertThat(assets("export {}").address("site.css")).isEqualTo(assets.address("site.css"));
  }

  @Test
  void theLibraryFilesOfAStyleSheetHaveTheirAddresses() throws IOException {
    assertThat(get(assets.address("site.css")).text())
        .contains("url(\"" + assets.address("lib/inter/a.woff2") + "\")");
  }

  @Test
  void withoutTheRightHashAFileIsAskedForAgain() throws IOException {
    for (String target :
        new String[] {"/assets/site.css", "/lib/inter/a.woff2", "/lib/inter/a.woff2?v=0"}) {
      Answer answer = get(target);
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.header("Cache-Control")).isEqualTo("no-cache");
    }
  }

  @Test
  void whoHasItIsToldSo() throws IOException {
    String tag = get("/assets/site.css").header("ETag");
    assertThat(tag).matches("\"[0-9a-f]{16}\"");
    Answer again =
        Exchange.request(server.port(), "GET", "/assets/site.css")
            .header("If-None-Match", tag)
            .send();
    assertThat(again.status()).isEqualTo(304);
    assertThat(again.bytes()).isEmpty();
  }

  @Test
  void textIsSqueezedForThoseWhoTakeIt() throws IOException {
    Answer plain = get("/assets/site.css");
    Answer squeezed =
        Exchange.request(server.port(), "GET", "/assets/site.css")
            .header("Accept-Encoding", "br, gzip")
            .send();
    assertThat(plain.header("Vary")).isEqualTo("Accept-Encoding");
    assertThat(plain.header("Content-Encoding")).isNull();
    assertThat(squeezed.header("Vary")).isEqualTo("Accept-Encoding");
    assertThat(squeezed.header("Content-Encoding")).isEqualTo("gzip");
    assertThat(squeezed.header("ETag")).isNotEqualTo(plain.header("ETag"));
    assertThat(squeezed.bytes().length).isLessThan(plain.bytes().length / 2);
    byte[] whole = new GZIPInputStream(new ByteArrayInputStream(squeezed.bytes())).readAllBytes();
    assertThat(whole).isEqualTo(plain.bytes());
    Answer refused =
        Exchange.request(server.port(), "GET", "/assets/site.css")
            .header("Accept-Encoding", "gzip;q=0")
            .send();
    assertThat(refused.header("Content-Encoding")).isNull();
    Answer font =
        Exchange.request(server.port(), "GET", "/lib/inter/a.woff2")
            .header("Accept-Encoding", "gzip")
            .send();
    assertThat(font.header("Content-Encoding")).isNull();
  }

  @Test
  void nothingElseIsServed() throws IOException {
    for (String target :
        new String[] {
          "/assets/none.css",
          "/assets/",
          "/lib/inter/none",
          "/lib/none/a",
          "/lib/inter",
          "/assets/../secret",
          "/lib/inter/%2e%2e/a.woff2"
        }) {
      assertThat(get(target).status()).as(target).isIn(400, 404);
    }
    assertThatThrownBy(() -> assets.address("none.css"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> assets.address("lib/inter/none"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void sheetsOfAFolderAreAlsoServedAsOne() throws IOException {
    Assets sheets =
        new Assets(
            Map.of(
                "plots/tokens.css", bytes("b {}\n"),
                "plots/base.css", bytes("a {}\n"),
                "plots/cursor.js", bytes("export {};")),
            path -> Optional.empty());
    try (Server own =
        Server.start(
            new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 1_000),
            (kind, faults, requestId) -> kind.slug(),
            () -> "",
            sheets::addTo)) {
      Answer answer = Exchange.get(own.port(), sheets.address("plots.css"));
      assertThat(answer.text()).isEqualTo("a {}\nb {}\n");
    }
  }
}
