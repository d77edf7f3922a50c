package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;
import thudbook.photos.Pictures;

/** Documents in, one at a time, and out, all together. Scenario tests. */
class DocumentsTest {
  @TempDir static Path folder;
  private static ServedNotebook notebook;
  private static int port;

  @BeforeAll
  static void open() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of());
    port = notebook.port();
  }

  @AfterAll
  static void close() {
    notebook.close();
  }

  private static Answer post(String document) throws IOException {
    return Exchange.request(port, "POST", "/api/documents")
        .body("text/markdown", document.getBytes(StandardCharsets.UTF_8))
        .send();
  }

  @Test
  void aDocumentBecomesARecipeAtTheAddressThatIsTold() throws IOException {
    Answer answer = post("---\nthudbook: recipe/1\ntitle: Buoy # bell\n---\nRing it.\n");
    assertThat(answer.status()).isEqualTo(201);
    assertThat(answer.header("Location")).isEqualTo("/api/recipes/buoy");
    JsonNode told = new ObjectMapper().readTree(answer.bytes());
    assertThat(told.get("noun").asText()).isEqualTo("recipe");
    assertThat(told.get("notes").get(0).asText()).isEqualTo("1 comment was dropped");
    String document = Exchange.get(port, "/api/recipes/buoy/document").text();
    assertThat(document).contains("title: Buoy\n", "id: " + told.get("id").asText(), "Ring it.");
    assertThat(post(document).status()).isEqualTo(409);
    assertThat(post("---\nthudbook: recipe/1\ntitle: Buoy\n---\n").header("Location"))
        .isEqualTo("/api/recipes/buoy-2");
  }

  @Test
  void aGateIsTakenTooAndFaultsAreToldWithTheirLines() throws IOException {
    String gate = Files.readString(Path.of("sample-library", "gates", "keeper-twin.md"));
    assertThat(post(gate).status()).isEqualTo(409);
    String other =
        gate.replaceFirst("id: .*\n", "").replaceFirst("slug: .*\n", "").replace("Keeper", "Other");
    assertThat(post(other).header("Location")).isEqualTo("/api/gates/other-twin");
    Answer faulty = post("---\nthudbook: recipe/1\nrating: 9\n---\n");
    assertThat(faulty.status()).isEqualTo(422);
    assertThat(faulty.text()).contains("/rating", "/title");
    assertThat(post("no document").status()).isEqualTo(400);
  }

  @Test
  void everythingComesOutAsAZipOfDocuments() throws IOException {
    JsonNode photo =
        new ObjectMapper()
            .readTree(
                Exchange.request(port, "POST", "/api/media")
                    .body("image/png", Pictures.png(30, 20))
                    .send()
                    .bytes());
    Answer answer = Exchange.get(port, "/api/documents");
    assertThat(answer.header("Content-Type")).isEqualTo("application/zip");
    assertThat(answer.header("Content-Disposition")).contains("thudbook.zip");
    Map<String, String> files = new TreeMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(answer.bytes()))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        files.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    assertThat(files).containsKey("media/" + photo.get("file").asText());
    for (String noun : new String[] {"gates", "recipes"}) {
      try (var samples = Files.list(Path.of("sample-library", noun))) {
        for (Path sample : samples.toList()) {
          assertThat(files.get(noun + "/" + sample.getFileName()))
              .isEqualTo(Files.readString(sample));
        }
      }
    }
  }
}
