package thudbook.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import thudbook.Exchange;

/** Gates are changed behind very many recipes, while somebody looks at the list. */
final class GateEdit {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Between two looks at the list: without it they would take a processor of their own. */
  private static final int PAUSE_MILLISECONDS = 100;

  private final int port;
  private int recipes;

  GateEdit(int port) {
    this.port = port;
  }

  /**
   * Changes gates one after the other and waits until every recipe that uses them is predicted
   * again.
   *
   * @param title of the figure
   * @param slugs of the gates
   */
  Figure measure(String title, List<String> slugs, String aim)
      throws IOException, InterruptedException {
    long start = System.nanoTime();
    List<String> jobs = new ArrayList<>();
    List<Double> saves = new ArrayList<>();
    for (String slug : slugs) {
      long before = System.nanoTime();
      jobs.add(change("/api/gates/" + slug));
      saves.add((System.nanoTime() - before) / 1e6);
    }
    List<Double> lists = new ArrayList<>();
    for (String job : jobs) {
      JsonNode progress;
      do {
        long asked = System.nanoTime();
        expect(Exchange.get(port, "/api/recipes?limit=40"));
        lists.add((System.nanoTime() - asked) / 1e6);
        Thread.sleep(PAUSE_MILLISECONDS);
        progress = JSON.readTree(Exchange.get(port, job).bytes());
      } while (!progress.get("finished").asBoolean());
      recipes += progress.get("recipes").asInt();
    }
    double all = (System.nanoTime() - start) / 1e9;
    Collections.sort(lists);
    return new Figure(
        title + ": predicted again, and the list in JSON meanwhile, ten times a second",
        String.format(
            Locale.ROOT,
            "%,d predictions in %.1f s (%.0f µs each, two threads), list median %.0f ms, 95 %% within"
                + " %.0f ms (a gate saved in at most %.0f ms)",
            recipes,
            all,
            all * 1e6 / recipes,
            lists.get(lists.size() / 2),
            lists.get(lists.size() * 95 / 100),
            Collections.max(saves)),
        aim);
  }

  /** Changes when a channel opens, and answers the address of the job. */
  private String change(String gate) throws IOException {
    ObjectNode document = (ObjectNode) JSON.readTree(Exchange.get(port, gate).bytes());
    ((ObjectNode) document.get("channels").get(0)).put("opening", 0.0013);
    expect(
        Exchange.request(port, "PUT", gate)
            .header("If-Match", "*")
            .body("application/json", document.toString().getBytes(StandardCharsets.UTF_8))
            .send());
    JsonNode revisions = JSON.readTree(Exchange.get(port, gate + "/revisions").bytes());
    return "/api/jobs/" + revisions.get("revisions").get(0).get("change");
  }

  private static void expect(Exchange.Answer answer) throws IOException {
    if (answer.status() != 200) {
      throw new IOException("answered " + answer.status() + ": " + answer.text());
    }
  }
}
