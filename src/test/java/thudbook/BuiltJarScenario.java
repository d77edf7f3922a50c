package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange.Answer;

/** The built jar as a process of its own, started from an empty folder. Scenario tests. */
@Timeout(value = 15, unit = TimeUnit.MINUTES)
class BuiltJarScenario {
  private static final Path JAR = Path.of("target", "thudbook.jar").toAbsolutePath();
  private static final Path ARCHIVE = Path.of("target", "thudbook.jsa").toAbsolutePath();
  private static final String READY = "Thudbook is ready at ";

  @TempDir private Path folder;

  private final List<Process> started = new ArrayList<>();

  @AfterEach
  void endWhatWasStarted() {
    started.forEach(Process::destroyForcibly);
  }

  private Process start(List<String> options, String... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(List.of("-jar", JAR.toString()));
    command.addAll(List.of(args));
    Process process =
        new ProcessBuilder(command)
            .directory(Files.createDirectories(folder.resolve("empty")).toFile())
            .redirectError(folder.resolve("errors").toFile())
            .start();
    started.add(process);
    return process;
  }

  private Process serve(List<String> options) throws IOException {
    return start(options, "serve", "--port", "0", "--data", folder.resolve("data").toString());
  }

  private int port(Process process) throws IOException {
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    String line = out.readLine();
    assertThat(line).as(errors()).startsWith(READY + "http://127.0.0.1:").endsWith("/");
    return URI.create(line.substring(READY.length())).getPort();
  }

  private String errors() throws IOException {
    return Files.readString(folder.resolve("errors"));
  }

  @Test
  void fromAnEmptyFolderThePageListsTheSamples() throws Exception {
    Process process = serve(List.of());
    int port = port(process);
    Answer page = Exchange.get(port, "/");
    assertThat(page.status()).isEqualTo(200);
    assertThat(page.text()).contains("Slack-tide kick");
    assertThat(Exchange.get(port, "/api/recipes?limit=1").text()).contains("\"total\":");
    assertThat(Exchange.get(port, "/lib/inter/inter-latin-400-normal.woff2").status())
        .isEqualTo(200);
    process.destroy();
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    assertThat(errors()).isEmpty();
    assertThat(folder.resolve("empty")).isEmptyDirectory();
  }

  @Test
  void aStopFinishesWhatIsBeingAnswered() throws Exception {
    Process process = serve(List.of());
    int port = port(process);
    byte[] body =
        """
        {"source": {"kind": "noise"},
         "envelope": {"kind": "pulse", "peak": 5, "length": 0.004},
         "stages": [{"gate": "keeper-twin", "channel": "quick"}]}
        """
            .getBytes(StandardCharsets.UTF_8);
    String head =
        "POST /api/predictions HTTP/1.1\r\nHost: 127.0.0.1:"
            + port
            + "\r\nContent-Type: application/json\r\nContent-Length: "
            + body.length
            + "\r\nExpect: 100-continue\r\n\r\n";
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      OutputStream out = socket.getOutputStream();
      out.write(head.getBytes(StandardCharsets.US_ASCII));
      out.flush();
      // Says that the handler is waiting for the body: the request is in flight.
      assertThat(head(socket.getInputStream())).startsWith("HTTP/1.1 100");
      process.destroy();
      waitUntilNobodyElseIsAnswered(port);
      out.write(body);
      out.flush();
      Answer answer = Answer.read(socket.getInputStream());
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.text()).contains("\"peakDb\":");
    }
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    assertThat(errors()).isEmpty();
  }

  private static String head(InputStream in) throws IOException {
    StringBuilder head = new StringBuilder();
    while (head.indexOf("\r\n\r\n") < 0) {
      head.append((char) in.read());
    }
    return head.toString();
  }

  private static void waitUntilNobodyElseIsAnswered(int port) throws InterruptedException {
    while (true) {
      try {
        Exchange.get(port, "/health");
        Thread.sleep(20);
      } catch (IOException e) {
        return;
      }
    }
  }

  @Test
  void aSecondServeIsRefusedAndTheDataOutlivesAStop() throws Exception {
    Process first = serve(List.of());
    int port = port(first);
    String id = Exchange.get(port, "/api/recipes?limit=1&order=title").text();
    Process second = serve(List.of());
    assertThat(second.waitFor()).isEqualTo(1);
    assertThat(errors()).contains("is in use").hasLineCount(1);
    assertThat(second.inputReader(StandardCharsets.UTF_8).readLine()).isNull();
    first.destroy();
    assertThat(first.waitFor(30, TimeUnit.SECONDS)).isTrue();
    Process again = serve(List.of());
    assertThat(Exchange.get(port(again), "/api/recipes?limit=1&order=title").text()).isEqualTo(id);
  }

  @Test
  void theArchiveOfTheBuildIsUsedAndMayBeMissing() throws Exception {
    assertThat(ARCHIVE).exists();
    Process with =
        serve(
            List.of(
                "-XX:SharedArchiveFile=" + ARCHIVE,
                "-XX:+UseSerialGC",
                "-Xlog:class+load:file=" + folder.resolve("classes")));
    port(with);
    with.destroy();
    assertThat(with.waitFor(30, TimeUnit.SECONDS)).isTrue();
    assertThat(Files.readString(folder.resolve("classes")))
        .contains("thudbook.web.Server source: shared objects file");
    Process without = serve(List.of("-XX:SharedArchiveFile=" + folder.resolve("none.jsa")));
    port(without);
  }

  @Test
  void theCommandLineAnswersFromTheJar() throws Exception {
    Path recipe = Path.of("sample-library", "recipes", "slack-tide-kick.md").toAbsolutePath();
    Process predict = start(List.of(), "predict", recipe.toString());
    String out = new String(predict.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(predict.waitFor()).isZero();
    assertThat(out).startsWith("Slack-tide kick");
    Process version = start(List.of(), "--version");
    assertThat(new String(version.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
        .matches("Thudbook \\d+\\.\\d+\\.\\d+\\R");
  }
}
