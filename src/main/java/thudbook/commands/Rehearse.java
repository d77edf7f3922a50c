package thudbook.commands;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import thudbook.settings.Settings;

/**
 * Starts the notebook in a temporary folder, asks it for one thing of each kind and stops. The
 * build runs this with {@code -XX:ArchiveClassesAtExit}: the archive then holds the classes of a
 * real start, and a start with it takes half the time.
 */
@Command(name = "rehearse", hidden = true)
public final class Rehearse implements Callable<Integer> {
  private static final List<String> ADDRESSES =
      List.of(
          "",
          "recipes/slack-tide-kick",
          "gates",
          "gates/keeper-twin",
          "help",
          "health",
          "api/recipes",
          "api/recipes/slack-tide-kick",
          "api/gates",
          "no");
  private static final String SOUND =
      """
      {"source": {"kind": "noise"},
       "envelope": {"kind": "pulse", "peak": 5, "length": 0.004},
       "stages": [{"gate": "keeper-twin", "channel": "quick"}]}
      """;

  private final Served.Opening opening;

  public Rehearse(Served.Opening opening) {
    this.opening = opening;
  }

  @Override
  public Integer call() throws IOException {
    Path folder = Files.createTempDirectory("thudbook-rehearsal");
    Map<String, String> options = Map.of("port", "0", "data", folder.toString());
    try (Served notebook = opening.open(Settings.of(options, Map.of(), Map.of()))) {
      for (String address : ADDRESSES) {
        ask(notebook.url().resolve(address), null);
      }
      ask(notebook.url().resolve("api/predictions?include=curve"), SOUND);
    } finally {
      delete(folder);
    }
    return 0;
  }

  private static void ask(URI address, @Nullable String body) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection();
    if (body != null) {
      connection.setDoOutput(true);
      connection.setRequestProperty("Content-Type", "application/json");
      connection.getOutputStream().write(body.getBytes(StandardCharsets.UTF_8));
    }
    InputStream answer =
        connection.getResponseCode() < 400
            ? connection.getInputStream()
            : connection.getErrorStream();
    try (answer) {
      answer.readAllBytes();
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files
          .sorted(Comparator.reverseOrder())
          .forEach(
              file -> {
                try {
                  Files.delete(file);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }
  }
}
