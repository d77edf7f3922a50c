package thudbook.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange;
import thudbook.Exchange.Answer;
import thudbook.ServedNotebook;

/** Scenario: sessions over JSON, and what a sheet at the rack sends. */
class SessionsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String STORM = "/api/sessions/act-two-the-storm";
  private static final String RECALL = "/recalls/00000000-0000-4000-8000-000000000001";

  @TempDir Path folder;
  private ServedNotebook notebook;

  @BeforeEach
  void start() throws IOException {
    notebook = ServedNotebook.in(folder, Map.of());
  }

  @AfterEach
  void stop() {
    notebook.close();
  }

  @Test
  void aSessionIsPlannedChangedThrownAwayAndTakenBack() throws IOException {
    String body = "{\"title\": \"Dress rehearsal\", \"recipes\": [{\"recipe\": \"bell-buoy\"}]}";
    Answer first = send("POST", "/api/sessions", null, body);
    assertThat(first.status()).as(first.text()).isEqualTo(201);
    String address = first.header("Location");
    assertThat(address).isEqualTo("/api/sessions/dress-rehearsal");
    ObjectNode session = (ObjectNode) JSON.readTree(get(address).bytes());
    session.put("date", "2026-11-05");
    assertThat(send("PUT", address, null, session.toString()).status()).isEqualTo(428);
    assertThat(send("PUT", address, "\"9\"", session.toString()).status()).isEqualTo(412);
    assertThat(send("PUT", address, "\"1\"", session.toString()).status()).isEqualTo(200);
    assertThat(get(address + "/document").text()).contains("date: \"2026-11-05\"");
    JsonNode history = JSON.readTree(get(address + "/revisions").bytes()).get("revisions");
    assertThat(history.get(0).get("what").asText()).isEqualTo("changed day");
    assertThat(send("DELETE", address, "\"2\"", "").status()).isEqualTo(200);
    assertThat(get(address).status()).isEqualTo(404);
    assertThat(get("/api/bin").text()).contains("Dress rehearsal");
    assertThat(send("POST", address + "/restore", null, "").status()).isEqualTo(200);
    assertThat(get(address).status()).isEqualTo(200);
  }

  @Test
  void thePlanTellsClashesAndABetterOrder() throws IOException {
    JsonNode plan = JSON.readTree(get(STORM + "/plan").bytes());
    int moves = 0;
    for (JsonNode step : plan.get("steps")) {
      int own = step.get("pull").size() + step.get("make").size() + step.get("set").size();
      assertThat(step.get("moves").asInt()).isEqualTo(own);
      moves += own;
    }
    assertThat(plan.get("moves").asInt()).isEqualTo(moves);
    assertThat(plan.get("clashes").get(0).get("what").asText()).isEqualTo("keeper-twin quick");
    assertThat(plan.get("clashes").get(0).get("channels")).isNotEmpty();
    assertThat(plan.get("better").get("exact").asBoolean()).isTrue();
    assertThat(plan.get("better").get("clashes").asInt())
        .isLessThan(plan.get("better").get("clashesNow").asInt());
  }

  @Test
  void aSessionWithFaultsIsRefusedWithEachOfThem() throws IOException {
    String body =
        "{\"title\": \"x\", \"recipes\": [{\"recipe\": \"Not a slug\"}, {\"place\": \"first\"}]}";
    Answer answer = send("POST", "/api/sessions", null, body);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text())
        .contains("/recipes/0/recipe", "/recipes/1/recipe", "/recipes/1/place");
  }

  @Test
  void ticksAreKeptAndAnythingElseIsRefused() throws IOException {
    String ticks =
        "{\"recipe\": \"bell-buoy\", \"revision\": 1, \"session\": \"\", \"step\": 2,"
            + " \"marks\": {\"ticked\": [\"c:a > b\", 7], \"asSet\": {\"s:O1 / tune\": \"9:00\"}}}";
    assertThat(send("PUT", RECALL, null, ticks).status()).isEqualTo(204);
    assertThat(get("/recipes/bell-buoy/recall").text()).contains("value=\"9:00\"");
    String late = ticks.replace("\"step\": 2", "\"step\": 1").replace("9:00", "8:00");
    assertThat(send("PUT", RECALL, null, late).status()).isEqualTo(204);
    assertThat(get("/recipes/bell-buoy/recall").text()).doesNotContain("value=\"8:00\"");
    for (String hostile :
        new String[] {
          "",
          "[]",
          "{",
          "{\"recipe\": \"bell-buoy\"}",
          ticks.replace("\"marks\": {", "\"marks\": [{") + "]",
          "{\"recipe\": \"bell-buoy\", \"marks\": {\"ticked\": [" + "1,".repeat(2000) + "1]}}",
          ticks + " ".repeat(300_000)
        }) {
      assertThat(send("PUT", RECALL, null, hostile).status()).as(hostile).isEqualTo(400);
    }
    assertThat(send("PUT", RECALL, null, ticks.replace("bell-buoy", "none")).status())
        .isEqualTo(404);
    assertThat(send("PUT", "/recalls/7", null, ticks).status()).isEqualTo(404);
    assertThat(
            Exchange.request(notebook.port(), "PUT", RECALL)
                .header("Origin", "http://elsewhere.example")
                .body("application/json", ticks.getBytes(StandardCharsets.UTF_8))
                .send()
                .status())
        .isEqualTo(403);
  }

  private Answer get(String target) throws IOException {
    return Exchange.get(notebook.port(), target);
  }

  private Answer send(String method, String target, String ifMatch, String body)
      throws IOException {
    return Exchange.request(notebook.port(), method, target)
        .header("If-Match", ifMatch)
        .body("application/json", body.getBytes(StandardCharsets.UTF_8))
        .send();
  }
}
