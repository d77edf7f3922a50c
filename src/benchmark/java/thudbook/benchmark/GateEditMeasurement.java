package thudbook.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import thudbook.Exchange;

/** A gate is changed behind very many recipes, while somebody looks at the list. */
final class GateEditMeasurement implements Measurement {
  private static final int RECIPES = 20_000;
  private static final String GATE = "/api/gates/keeper-twin";
  private static final ObjectMapper JSON = new ObjectMapper();

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    Path data = folder.resolve("data");
    LargeNotebook.fill(data, RECIPES);
    try (ServerProcess server = ServerProcess.thudbook(data)) {
      int port = server.port();
      ObjectNode gate = (ObjectNode) JSON.readTree(Exchange.get(port, GATE).bytes());
      ((ObjectNode) gate.get("channels").get(0)).put("opening", 0.0013);
      long start = System.nanoTime();
      expect(
          Exchange.request(port, "PUT", GATE)
              .header("If-Match", "*")
              .body("application/json", gate.toString().getBytes(StandardCharsets.UTF_8))
              .send(),
          200);
      double saved = (System.nanoTime() - start) / 1e6;
      JsonNode revisions = JSON.readTree(Exchange.get(port, GATE + "/revisions").bytes());
      String job = "/api/jobs/" + revisions.get("revisions").get(0).get("change");
      List<Double> lists = new ArrayList<>();
      JsonNode progress;
      do {
        long asked = System.nanoTime();
        expect(Exchange.get(port, "/"), 200);
        lists.add((System.nanoTime() - asked) / 1e6);
        progress = JSON.readTree(Exchange.get(port, job).bytes());
      } while (!progress.get("finished").asBoolean());
      double all = (System.nanoTime() - start) / 1e9;
      Collections.sort(lists);
      return List.of(
          new Figure(
              "a gate changed behind 20,000 recipes, of which "
                  + progress.get("recipes")
                  + " use it: the list meanwhile",
              String.format(
                  Locale.ROOT,
                  "95 %% within %.0f ms (saved in %.0f ms, all predicted again in %.1f s)",
                  lists.get(lists.size() * 95 / 100),
                  saved,
                  all),
              "–"));
    }
  }

  private static void expect(Exchange.Answer answer, int status) throws IOException {
    if (answer.status() != status) {
      throw new IOException("answered " + answer.status() + ": " + answer.text());
    }
  }
}
