package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Predictor;
import thudbook.recipes.Recipe;

/** The command line on real files. Scenario tests. */
class CommandLineTest {
  private static final Path RECIPES = Path.of("sample-library", "recipes");
  private static final String KICK = RECIPES.resolve("slack-tide-kick.md").toString();
  private static final String HALF_WRITTEN = RECIPES.resolve("parcel-from-the-boat.md").toString();
  private static final String GATE =
      Path.of("sample-library", "gates", "keeper-twin.md").toString();

  @TempDir private Path folder;

  private record Result(int code, String out, String err) {}

  private static Result run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Main.commandLine(new PrintWriter(out, true), new PrintWriter(err, true), Map.of())
            .execute(args);
    return new Result(code, out.toString(), err.toString());
  }

  @Test
  void aPredictionIsShownInWordsWithUnits() {
    Result result = run("predict", KICK);
    assertThat(result.err()).isEmpty();
    assertThat(result.code()).isZero();
    assertThat(result.out()).startsWith("Slack-tide kick (");
    assertThat(result.out()).containsPattern("  Hold +\\d[\\d.]* (ms|s)(  envelope only)?\n");
    assertThat(result.out()).containsPattern("  Peak +-?\\d[\\d.]* dB\n");
  }

  @Test
  void jsonIsWhatThePredictorSaysOneLinePerFile() throws IOException {
    List<Path> files = files();
    Result result =
        run(
            Stream.concat(Stream.of("predict", "--json"), files.stream().map(Path::toString))
                .toArray(String[]::new));
    assertThat(result.code()).isZero();
    List<String> lines = result.out().lines().toList();
    assertThat(lines).hasSameSizeAs(files);
    Samples samples = new Samples();
    for (int i = 0; i < lines.size(); i++) {
      JsonNode line = new ObjectMapper().readTree(lines.get(i));
      assertThat(line.get("file").asText()).isEqualTo(files.get(i).toString());
      Metrics metrics = metricsOf(files.get(i), samples);
      for (Metric metric : Metric.values()) {
        JsonNode told = line.get("metrics").get(metric.key());
        assertThat(told.isNull() ? null : told.doubleValue())
            .as("%s of %s", metric.key(), files.get(i))
            .isEqualTo(metrics.values().get(metric));
      }
    }
  }

  private static List<Path> files() throws IOException {
    try (var files = Files.list(RECIPES)) {
      return files
          .filter(file -> !Samples.HALF_WRITTEN.containsKey(file.getFileName().toString()))
          .sorted()
          .toList();
    }
  }

  private static Metrics metricsOf(Path file, Samples samples) throws IOException {
    Recipe recipe = (Recipe) Samples.read(Files.readAllBytes(file)).thing();
    return Predictor.predict(samples.sounds.get(recipe.slug())).metrics();
  }

  @Test
  void gatesAreFoundInAGivenFolderOrNotebook() throws IOException {
    Path alone = Files.copy(Path.of(KICK), folder.resolve("kick.md"));
    Result nowhere = run("predict", alone.toString());
    assertThat(nowhere.code()).isEqualTo(1);
    assertThat(nowhere.err())
        .isEqualTo(alone + ": no prediction yet: no gate keeper-twin in the studio\n");
    String gates = Path.of(GATE).getParent().toString();
    Result given = run("predict", "--gates", gates, alone.toString());
    assertThat(given.code()).isZero();
    Path data = folder.resolve("data");
    ServedNotebook.in(data, Map.of()).close();
    Result notebook = run("predict", "--data", data.toString(), alone.toString());
    assertThat(notebook.code()).isZero();
    assertThat(notebook.out()).isEqualTo(given.out()).isEqualTo(run("predict", KICK).out());
  }

  @Test
  void aNotebookThatIsBeingServedIsRefusedInOneLine() throws IOException {
    try (ServedNotebook served = ServedNotebook.in(folder, Map.of("samples", "no"))) {
      Result result = run("predict", "--data", folder.toString(), KICK);
      assertThat(result.code()).isEqualTo(1);
      assertThat(result.err()).contains("is in use").hasLineCount(1);
      Result second = run("serve", "--port", "0", "--data", folder.toString());
      assertThat(second.code()).isEqualTo(1);
      assertThat(second.err()).contains("is in use").hasLineCount(1);
      String port = String.valueOf(served.port());
      Result other = run("serve", "--port", port, "--data", folder.resolve("b").toString());
      assertThat(other.code()).isEqualTo(1);
      assertThat(other.err())
          .isEqualTo("port " + port + " is in use: choose another with --port\n");
    }
  }

  @Test
  void aHalfWrittenRecipePassesTheCheckAndIsNotPredicted() {
    Result check = run("check", HALF_WRITTEN, GATE);
    assertThat(check.code()).isZero();
    assertThat(check.out())
        .contains(HALF_WRITTEN + ": a recipe, half-written\n")
        .contains(HALF_WRITTEN + ": no prediction yet: no gate channel\n")
        .contains(GATE + ": a gate\n");
    Result predict = run("predict", HALF_WRITTEN, KICK);
    assertThat(predict.code()).isEqualTo(1);
    assertThat(predict.err()).contains(HALF_WRITTEN + ": no prediction yet: no gate channel\n");
    assertThat(predict.out()).startsWith("Slack-tide kick");
  }

  @Test
  void everyFaultIsALineWithFileLineAndKey() throws IOException {
    Path bad = folder.resolve("bad.md");
    Files.writeString(
        bad,
        """
        ---
        thudbook: recipe/1
        title: Bad
        source:
          kind: noise
          level: 40 V
        envelope:
          kind: pulse
          peak: 5 V
          length: 1,2 ms
        ---
        """);
    Path missing = folder.resolve("missing.md");
    Result result = run("check", bad.toString(), missing.toString());
    assertThat(result.code()).isEqualTo(1);
    assertThat(result.err().lines().toList())
        .hasSize(3)
        .satisfiesExactly(
            line -> assertThat(line).startsWith(bad + ":6: source.level: ").contains("40 V"),
            line -> assertThat(line).startsWith(bad + ":10: envelope.length: ").contains("1.2 ms"),
            line -> assertThat(line).isEqualTo(missing + ": there is no such file"));
  }

  @Test
  void aFaultyGateIsToldAtItsOwnFile() throws IOException {
    Path recipes = Files.createDirectories(folder.resolve("recipes"));
    Path gates = Files.createDirectories(folder.resolve("gates"));
    Path recipe = Files.copy(Path.of(KICK), recipes.resolve("kick.md"));
    Path gate = gates.resolve("keeper-twin.md");
    Files.writeString(gate, Files.readString(Path.of(GATE)).replaceFirst("poles: 2", "poles: 3"));
    Result result = run("predict", recipe.toString());
    assertThat(result.code()).isEqualTo(1);
    assertThat(result.err()).startsWith(gate + ":").contains("channels.0.poles").hasLineCount(1);
  }

  @Test
  void wrongUsageIsCodeTwo() {
    assertThat(run("predict").code()).isEqualTo(2);
    assertThat(run("nonsense").code()).isEqualTo(2);
    assertThat(run("predict", "--gates", folder.resolve("no").toString(), KICK).code())
        .isEqualTo(2);
    assertThat(run("predict", "--gates", "a", "--data", "b", KICK).code()).isEqualTo(2);
    assertThat(run().code()).isEqualTo(2);
    Result serve = run("serve", "--listen", "0.0.0.0", "--port", "x");
    assertThat(serve.code()).isEqualTo(2);
    assertThat(serve.err().lines().toList())
        .satisfiesExactly(
            line -> assertThat(line).startsWith("--port: found x"),
            line -> assertThat(line).startsWith("--listen: found 0.0.0.0").contains("loopback"));
  }

  @Test
  void helpAndVersionAreTold() {
    assertThat(run("--help").out())
        .contains("serve", "predict", "check")
        .doesNotContain("rehearse");
    assertThat(run("--version").out()).startsWith("Thudbook ");
    Result settings = run("serve", "--print-settings", "--port", "0");
    assertThat(settings.code()).isZero();
    assertThat(settings.out()).startsWith("port          0\n");
    assertThat(run("serve", "--help").out()).contains("--upload-limit", "THUDBOOK_PORT");
  }
}
