package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;

/** Scenario: twenty clients save one recipe at the same moment, again and again. */
class ManySaveAtOnceTest {
  private static final int CLIENTS = 20;
  private static final int ROUNDS = 20;
  private static final String RECIPE = "/api/recipes/tin-bucket";

  @TempDir Path folder;

  @Test
  void oneOfThemWinsEachRoundAndTheOthersAreTold() throws Exception {
    ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
    try (ServedNotebook notebook = ServedNotebook.in(folder, Map.of())) {
      int port = notebook.port();
      Answer first = save(port, "POST", "/api/recipes", null, "at first");
      assertThat(first.status()).as(first.text()).isEqualTo(201);
      for (int round = 0; round < ROUNDS; round++) {
        String version = Exchange.get(port, RECIPE).header("ETag");
        CyclicBarrier start = new CyclicBarrier(CLIENTS);
        List<Future<Answer>> answers = new ArrayList<>();
        for (int client = 0; client < CLIENTS; client++) {
          String notes = "round " + round + ", client " + client;
          answers.add(
              clients.submit(
                  () -> {
                    start.await();
                    return save(port, "PUT", RECIPE, version, notes);
                  }));
        }
        List<Integer> statuses = new ArrayList<>();
        Answer won = null;
        for (Future<Answer> each : answers) {
          Answer answer = each.get();
          statuses.add(answer.status());
          if (answer.status() == 200) {
            won = answer;
          } else {
            assertThat(answer.text()).contains("\"code\":\"stale\"");
          }
        }
        Collections.sort(statuses);
        List<Integer> expected = new ArrayList<>(Collections.nCopies(CLIENTS - 1, 412));
        expected.add(0, 200);
        assertThat(statuses).as("round %d", round).isEqualTo(expected);
        assertThat(Exchange.get(port, RECIPE).text())
            .as("what the winner was answered is what is kept")
            .isEqualTo(won.text());
      }
      assertThat(Exchange.get(port, RECIPE + "/revisions?limit=200").text())
          .contains("\"number\":" + (ROUNDS + 1))
          .doesNotContain("\"number\":" + (ROUNDS + 2));
    } finally {
      clients.shutdownNow();
    }
  }

  private static Answer save(int port, String method, String path, String version, String notes)
      throws Exception {
    String json =
        "{\"slug\": \"tin-bucket\", \"title\": \"Tin bucket\", \"notes\": \"" + notes + "\"}";
    return Exchange.request(port, method, path)
        .header("If-Match", version)
        .body("application/json", json.getBytes(StandardCharsets.UTF_8))
        .send();
  }
}
