package thudbook.benchmark;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import thudbook.Exchange;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.recipes.Recipe;

/** What the editor asks the server at every turn of a slider, at the HTTP answer. */
final class LiveMeasurement implements Measurement {
  private static final Path RECIPES = Path.of("sample-library", "recipes");
  private static final int WARM_UP = 1_000;
  private static final int TURNS = 500;

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    try (ServerProcess server = ServerProcess.thudbook(folder.resolve("data"))) {
      return List.of(
          measure(server, "gale-tom-high", "one strike"),
          measure(server, "slack-tide-kick", "a train of strikes"));
    }
  }

  private static Figure measure(ServerProcess server, String recipe, String what)
      throws IOException {
    Thing noun = LargeNotebook.read(Files.readString(RECIPES.resolve(recipe + ".md")));
    Map<String, List<String>> form = Documents.form(((Recipe) noun));
    double[] milliseconds = new double[TURNS];
    for (int turn = -WARM_UP; turn < TURNS; turn++) {
      byte[] body = turned(form, turn + WARM_UP).getBytes(StandardCharsets.UTF_8);
      long start = System.nanoTime();
      int status =
          Exchange.request(server.port(), "POST", "/editor/live")
              .header("Origin", "http://127.0.0.1:" + server.port())
              .body("application/x-www-form-urlencoded", body)
              .send()
              .status();
      if (status != 200) {
        throw new IllegalStateException("answered " + status);
      }
      if (turn >= 0) {
        milliseconds[turn] = (System.nanoTime() - start) / 1e6;
      }
    }
    Arrays.sort(milliseconds);
    return new Figure(
        "a turn of a slider in the editor: plots and numbers of " + what + ", at the HTTP answer",
        String.format(
            Locale.ROOT,
            "median %.1f ms, 95 %% within %.1f ms",
            milliseconds[TURNS / 2],
            milliseconds[TURNS * 95 / 100]),
        "under 10 ms");
  }

  private static String turned(Map<String, List<String>> form, int turn) {
    Map<String, List<String>> fields = new LinkedHashMap<>(form);
    // As the page asks: it tells which width it shows.
    fields.put("form.width", List.of("wide"));
    fields.put("envelope.attack-hold-decay.decay", List.of((120 + turn % 200) + " ms"));
    List<String> pairs = new ArrayList<>();
    fields.forEach(
        (name, values) -> values.forEach(value -> pairs.add(encoded(name) + "=" + encoded(value))));
    return String.join("&", pairs);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
