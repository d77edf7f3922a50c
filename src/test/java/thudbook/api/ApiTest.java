package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.Samples;
import thudbook.ServedNotebook;
import thudbook.predictions.Metric;

/** The JSON routes over the sample library. Scenario tests. */
class ApiTest {
  private static final Path RECIPES = Path.of("sample-library", "recipes");
  private static final Path GATES = Path.of("sample-library", "gates");
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path folder;

  private static ServedNotebook notebook;

  @BeforeAll
  static void start() throws IOException, SQLException {
    ServedNotebook.in(folder, Map.of()).close();
    // Nothing renames yet; an alias is what a rename will leave behind.
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("thudbook.db"));
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(
          "INSERT INTO thing_slug SELECT 'recipe', 'old-kick', id FROM thing WHERE slug ="
              + " 'slack-tide-kick'");
      statement.executeUpdate(
          "INSERT INTO thing_slug SELECT 'gate', 'old-twin', id FROM thing"
              + " WHERE noun = 'gate' AND slug = 'keeper-twin'");
    }
    notebook = ServedNotebook.in(folder, Map.of());
  }

  @AfterAll
  static void stop() {
    notebook.close();
  }

  private static Answer get(String target) throws IOException {
    return Exchange.get(notebook.port(), target);
  }

  private static JsonNode json(String target) throws IOException {
    Answer answer = get(target);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    assertThat(answer.header("Content-Type")).isEqualTo("application/json");
    return JSON.readTree(answer.bytes());
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static String slug(Path file) {
    return file.getFileName().toString().replace(".md", "");
  }

  @Test
  void healthTellsVersions() throws IOException {
    JsonNode health = json("/health");
    assertThat(health.get("alive").asBoolean()).isTrue();
    assertThat(health.get("ready").asBoolean()).isTrue();
    assertThat(health.get("schema").asInt()).isPositive();
    assertThat(health.get("modelVersion").asInt()).isPositive();
  }

  @Test
  void theListIsReadPageByPage() throws IOException {
    List<String> slugs = new ArrayList<>();
    String after = "";
    int pages = 0;
    while (after != null) {
      JsonNode page = json("/api/recipes?limit=10" + after);
      assertThat(page.get("total").asInt()).isEqualTo(files(RECIPES).size());
      assertThat(page.get("recipes")).hasSizeLessThanOrEqualTo(10);
      page.get("recipes").forEach(row -> slugs.add(row.get("slug").asText()));
      JsonNode next = page.get("next");
      after = next.isNull() ? null : "&after=" + next.asText();
      pages++;
    }
    assertThat(pages).isEqualTo((files(RECIPES).size() + 9) / 10);
    assertThat(slugs)
        .containsExactlyInAnyOrderElementsOf(files(RECIPES).stream().map(ApiTest::slug).toList());
    assertThat(get("/api/recipes").header("Cache-Control")).isEqualTo("no-store");
  }

  @Test
  void theListIsOrderedAndFiltered() throws IOException {
    List<String> titles = new ArrayList<>();
    json("/api/recipes?order=title&limit=200")
        .get("recipes")
        .forEach(row -> titles.add(row.get("title").asText()));
    assertThat(titles).isSortedAccordingTo(String.CASE_INSENSITIVE_ORDER);
    JsonNode kicks = json("/api/recipes?tag=kick&limit=200");
    assertThat(kicks.get("recipes").size()).isPositive().isLessThan(titles.size());
    for (JsonNode row : kicks.get("recipes")) {
      assertThat(row.get("tags").toString()).contains("\"kick\"");
    }
    assertThat(json("/api/recipes?tag=no-such-tag").get("total").asInt()).isZero();
  }

  @Test
  void aRowCarriesItsNumbersAndItsShape() throws IOException {
    for (JsonNode row : json("/api/recipes?limit=200").get("recipes")) {
      assertThat(row.get("stale").asBoolean()).isFalse();
      if (Samples.HALF_WRITTEN.containsKey(row.get("slug").asText() + ".md")) {
        assertThat(row.get("metrics").isNull()).isTrue();
        assertThat(row.get("shape").isNull()).isTrue();
      } else {
        assertThat(row.get("shape")).hasSize(48);
        for (Metric metric : Metric.values()) {
          assertThat(row.get("metrics").has(metric.key())).isTrue();
        }
        assertThat(row.get("metrics").get("reach").asText()).isNotEmpty();
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "limit=0, limit",
    "limit=201, limit",
    "limit=x, limit",
    "order=best, order",
    "after=!!, after"
  })
  void aListThatCanNotBeGivenIsRefused(String query, String name) throws IOException {
    Answer answer = get("/api/recipes?" + query);
    assertThat(answer.status()).isIn(400, 422);
    JsonNode problem = JSON.readTree(answer.bytes());
    assertThat(problem.get("errors").get(0).get("pointer").asText()).isEqualTo(name);
  }

  @Test
  void allFaultsOfAQueryAtOnce() throws IOException {
    JsonNode problem = JSON.readTree(get("/api/recipes?limit=0&order=best").bytes());
    assertThat(problem.get("errors").findValuesAsText("pointer")).containsExactly("order", "limit");
  }

  @Test
  void everySampleIsGivenBackAsItWasWritten() throws IOException {
    for (Path file : files(RECIPES)) {
      Answer answer = get("/api/recipes/" + slug(file) + "/document");
      assertThat(answer.header("Content-Type"))
          .isEqualToIgnoringWhitespace("text/markdown;charset=utf-8");
      assertThat(answer.text()).isEqualTo(Files.readString(file));
      JsonNode recipe = json("/api/recipes/" + slug(file));
      assertThat(recipe.get("slug").asText()).isEqualTo(slug(file));
      JsonNode byId = json("/api/recipes/" + recipe.get("id").asText());
      assertThat(byId).isEqualTo(recipe);
    }
    for (Path file : files(GATES)) {
      assertThat(get("/api/gates/" + slug(file) + "/document").text())
          .isEqualTo(Files.readString(file));
      assertThat(json("/api/gates/" + slug(file)).get("slug").asText()).isEqualTo(slug(file));
    }
  }

  @Test
  void gatesAreListed() throws IOException {
    HashSet<String> slugs = new HashSet<>();
    json("/api/gates").get("gates").forEach(gate -> slugs.add(gate.get("slug").asText()));
    assertThat(slugs)
        .containsExactlyInAnyOrderElementsOf(files(GATES).stream().map(ApiTest::slug).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/recipes/slack-tide-kick", "/api/recipes/slack-tide-kick/document",
        "/api/gates/keeper-twin", "/api/gates/keeper-twin/document"
      })
  void whoHasTheVersionIsToldSo(String target) throws IOException {
    String tag = get(target).header("ETag");
    assertThat(tag).isEqualTo("\"1\"");
    Answer again =
        Exchange.request(notebook.port(), "GET", target).header("If-None-Match", tag).send();
    assertThat(again.status()).isEqualTo(304);
    assertThat(again.bytes()).isEmpty();
  }

  @Test
  void aPredictionIsTheOneOfTheSameSoundSentIn() throws IOException {
    JsonNode recipe = json("/api/recipes/slack-tide-kick");
    var sound = JSON.createObjectNode();
    for (String key : List.of("source", "envelope", "strikes", "stages", "output")) {
      if (recipe.has(key)) {
        sound.set(key, recipe.get(key));
      }
    }
    Answer sent =
        Exchange.request(notebook.port(), "POST", "/api/predictions?include=curve")
            .body("application/json", sound.toString().getBytes(StandardCharsets.UTF_8))
            .send();
    assertThat(sent.status()).as(sent.text()).isEqualTo(200);
    JsonNode prediction = JSON.readTree(sent.bytes());
    assertThat(json("/api/recipes/slack-tide-kick/prediction?include=curve")).isEqualTo(prediction);
    assertThat(json("/api/recipes/slack-tide-kick/prediction").has("curve")).isFalse();
    JsonNode curve = prediction.get("curve");
    int points = curve.get("time").size();
    assertThat(points).isGreaterThan(10);
    for (String name : List.of("outputDb", "offset", "brightness")) {
      assertThat(curve.get(name)).hasSize(points);
    }
    for (String name : List.of("controlVoltage", "openness", "cutoff")) {
      assertThat(curve.get("stages").get(0).get(name)).hasSize(points);
    }
    assertThat(curve.get("worstDb").isNumber()).isTrue();
  }

  @Test
  void everyCompleteSampleIsPredictedAndTheOthersSayWhatTheyLack() throws IOException {
    for (Path file : files(RECIPES)) {
      String target = "/api/recipes/" + slug(file) + "/prediction?include=curve";
      if (Samples.HALF_WRITTEN.containsKey(file.getFileName().toString())) {
        Answer answer = get(target);
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.text())
            .contains("no prediction yet: ")
            .contains(Samples.HALF_WRITTEN.get(file.getFileName().toString()));
      } else {
        assertThat(json(target).get("metrics").get("peakDb").isNumber()).isTrue();
      }
    }
  }

  @Test
  void anOldSlugLeadsToTheNewOne() throws IOException {
    for (String[] pair :
        new String[][] {
          {"/api/recipes/old-kick", "/api/recipes/slack-tide-kick"},
          {"/api/recipes/old-kick/document", "/api/recipes/slack-tide-kick/document"},
          {
            "/api/recipes/old-kick/prediction?include=curve",
            "/api/recipes/slack-tide-kick/prediction?include=curve"
          },
          {"/api/gates/old-twin/document", "/api/gates/keeper-twin/document"}
        }) {
      Answer answer = get(pair[0]);
      assertThat(answer.status()).isEqualTo(308);
      assertThat(answer.header("Location")).endsWith(pair[1]);
      assertThat(get(pair[1]).status()).isEqualTo(200);
    }
  }

  @Test
  void whatIsNotThereIsAProblem() throws IOException {
    for (String target :
        List.of(
            "/api/recipes/none",
            "/api/recipes/none/prediction",
            "/api/gates/none",
            "/api/nothing",
            "/api/recipes/00000000-0000-0000-0000-000000000000",
            "/api")) {
      Answer answer = get(target);
      assertThat(answer.status()).isEqualTo(404);
      assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
    }
  }

  @Test
  void laterRoutesAreAbsent() throws IOException {
    for (String route : List.of("designs", "members", "auditions")) {
      assertThat(get("/api/" + route).status()).isEqualTo(404);
    }
  }

  @Test
  void aTypeThatDoesNotExistIsNotAcceptable() throws IOException {
    assertThat(
            Exchange.request(notebook.port(), "GET", "/api/recipes/slack-tide-kick")
                .header("Accept", "text/html")
                .send()
                .status())
        .isEqualTo(406);
    assertThat(
            Exchange.request(notebook.port(), "GET", "/api/recipes/slack-tide-kick/document")
                .header("Accept", "text/markdown")
                .send()
                .status())
        .isEqualTo(200);
  }
}
