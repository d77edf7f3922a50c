package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;

/**
 * Bodies of predictions that can't be taken: each is answered as a problem with the place of its
 * fault, never as an error of ours. Scenario tests.
 */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class MalformedPredictionTest {
  private static final String SOURCE = "\"source\":{\"kind\":\"noise\"}";
  private static final String ENVELOPE =
      "\"envelope\":{\"kind\":\"pulse\",\"peak\":5,\"length\":0.004}";
  private static final String STAGES =
      "\"stages\":[{\"gate\":\"keeper-twin\",\"channel\":\"quick\"}]";

  @TempDir private static Path folder;

  private static ServedNotebook notebook;

  @BeforeAll
  static void start() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of("upload-limit", "1 MB"));
  }

  @AfterAll
  static void stop() {
    notebook.close();
  }

  private static Exchange post() {
    return Exchange.request(notebook.port(), "POST", "/api/predictions");
  }

  private static Answer post(String body) throws IOException {
    return post().body("application/json", body.getBytes(StandardCharsets.UTF_8)).send();
  }

  private static JsonNode assertProblem(Answer answer, int status) throws IOException {
    assertThat(answer.status()).as(answer.text()).isEqualTo(status);
    assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
    assertThat(answer.text()).doesNotContain("Exception", "thudbook.", "jackson", "java.");
    JsonNode problem = new ObjectMapper().readTree(answer.bytes());
    assertThat(problem.get("status").asInt()).isEqualTo(status);
    return problem;
  }

  @Test
  void theBodyThatTheOthersAreVariationsOfIsTaken() throws IOException {
    assertThat(post("{" + SOURCE + "," + ENVELOPE + "," + STAGES + "}").status()).isEqualTo(200);
  }

  /** Columns: what is sent, the status, a pointer that must be among the faults. */
  @ParameterizedTest(name = "{index}: {0}")
  @CsvFileSource(resources = "malformed-predictions.csv", delimiter = '|', quoteCharacter = '~')
  void refused(String body, int status, String pointer) throws IOException {
    String whole =
        body.replace("SOURCE", SOURCE).replace("ENVELOPE", ENVELOPE).replace("STAGES", STAGES);
    JsonNode problem = assertProblem(post(whole), status);
    assertThat(problem.get("errors").findValuesAsText("pointer"))
        .contains(pointer == null ? "" : pointer);
    for (JsonNode error : problem.get("errors")) {
      assertThat(error.get("message").asText()).isNotBlank();
    }
  }

  @Test
  void knotsThatAreTooMany() throws IOException {
    String knots =
        IntStream.range(0, 100)
            .mapToObj(i -> "[" + i * 0.1 + "," + i / 99.0 + "]")
            .collect(Collectors.joining(","));
    String channel =
        "{\"name\":\"c\",\"transfer\":["
            + knots
            + "],\"opening\":0.001,"
            + "\"release\":[{\"share\":1,\"time\":0.05}],\"leak\":-60,"
            + "\"cutoff\":{\"closed\":40,\"open\":9000}}";
    JsonNode problem =
        assertProblem(
            post("{" + SOURCE + "," + ENVELOPE + ",\"stages\":[{\"channel\":" + channel + "}]}"),
            422);
    assertThat(problem.get("errors").findValuesAsText("pointer"))
        .contains("/stages/0/channel/transfer");
  }

  @Test
  void listsThatGoTooDeep() throws IOException {
    assertProblem(post("[".repeat(100_000) + "]".repeat(100_000)), 400);
    assertProblem(post("{\"a\":".repeat(40_000) + "1" + "}".repeat(40_000)), 400);
  }

  @Test
  void bodiesThatAreTooLarge() throws IOException {
    byte[] over = " ".repeat(1_000_001).getBytes(StandardCharsets.UTF_8);
    assertProblem(post().body("application/json", over).send(), 413);
    assertProblem(post().chunks("application/json", over).send(), 413);
    byte[] document = ("{\"a\":\"" + "x".repeat(300_000) + "\"}").getBytes(StandardCharsets.UTF_8);
    assertProblem(post().chunks("application/json", document).send(), 413);
  }

  @Test
  void bytesThatAreNotText() throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.writeBytes("{\"source\":\"".getBytes(StandardCharsets.UTF_8));
    body.write(0xC3);
    body.write(0x28);
    body.writeBytes("\"}".getBytes(StandardCharsets.UTF_8));
    assertProblem(post().body("application/json", body.toByteArray()).send(), 400);
    assertProblem(
        post().body("application/json", "{}".getBytes(StandardCharsets.UTF_16)).send(), 400);
  }

  @Test
  void typesThatAreNotJson() throws IOException {
    byte[] body = "{}".getBytes(StandardCharsets.UTF_8);
    assertProblem(post().body("application/xml", body).send(), 415);
    assertProblem(post().body("text/plain", body).send(), 403);
    assertProblem(
        Exchange.request(notebook.port(), "POST", "/api/predictions?include=all")
            .body("application/json", body)
            .send(),
        422);
  }
}
