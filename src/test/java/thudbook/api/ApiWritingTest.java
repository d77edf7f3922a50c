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

/** Scenario: recipes and gates are written, changed, thrown away and taken back over JSON. */
class ApiWritingTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String KICK = "/api/recipes/slack-tide-kick";
  private static final String TWIN = "/api/gates/keeper-twin";

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
  void aTitleAloneIsARecipeAndTheSameTitleGetsANumber() throws IOException {
    Answer first = send("POST", "/api/recipes", null, "{\"title\": \"Tin bucket\"}");
    assertThat(first.status()).as(first.text()).isEqualTo(201);
    assertThat(first.header("Location")).isEqualTo("/api/recipes/tin-bucket");
    assertThat(first.header("ETag")).isEqualTo("\"1\"");
    assertThat(JSON.readTree(first.bytes()).get("id").asText()).hasSize(36);
    Answer second = send("POST", "/api/recipes", null, "{\"title\": \"Tin bucket\"}");
    assertThat(second.header("Location")).isEqualTo("/api/recipes/tin-bucket-2");
    assertThat(get(second.header("Location")).text()).isEqualTo(second.text());
  }

  @Test
  void aChangeNamesTheVersionThatItIsMeantFor() throws IOException {
    ObjectNode kick = (ObjectNode) JSON.readTree(get(KICK).bytes());
    kick.put("rating", 5);
    expectProblem(send("PUT", KICK, null, kick.toString()), 428, null);
    expectProblem(send("PUT", KICK, "\"7\"", kick.toString()), 412, "stale");
    expectProblem(send("PUT", KICK, "W/\"1\"", kick.toString()), 412, "no-version");
    Answer changed = send("PUT", KICK, "\"1\"", kick.toString());
    assertThat(changed.status()).as(changed.text()).isEqualTo(200);
    assertThat(changed.header("ETag")).isEqualTo("\"2\"");
    assertThat(JSON.readTree(get(KICK).bytes())).isEqualTo(kick);
    JsonNode stale = expectProblem(send("PUT", KICK, "\"1\"", kick.toString()), 412, "stale");
    assertThat(stale.get("errors").get(0).get("expected").asText()).isEqualTo("2");
    JsonNode history = JSON.readTree(get(KICK + "/revisions").bytes()).get("revisions");
    assertThat(history).hasSize(2);
    assertThat(history.get(0).get("what").asText()).isEqualTo("changed rating");
  }

  @Test
  void aModuleIsReadChangedThrownAwayAndTakenBack() throws IOException {
    String address = "/api/modules/e1-attack-hold-decay";
    ObjectNode module = (ObjectNode) JSON.readTree(get(address).bytes());
    assertThat(module.get("label").asText()).isEqualTo("E1");
    ((ObjectNode) module.get("controls").get(2)).put("to", 10);
    Answer changed = send("PUT", address, "\"1\"", module.toString());
    assertThat(changed.status()).as(changed.text()).isEqualTo(200);
    assertThat(JSON.readTree(get(address).bytes())).isEqualTo(module);
    assertThat(get(address + "/document").text()).contains("to: 10000 ms");
    ((ObjectNode) module.get("controls").get(2)).put("to", 0.002);
    expectProblem(send("PUT", address, "\"2\"", module.toString()), 422, "same-ends");
    String other = "{\"label\": \"e1\", \"title\": \"Another\"}";
    expectProblem(send("POST", "/api/modules", null, other), 409, "label-taken");
    Answer binned = send("DELETE", address, "\"2\"", "");
    assertThat(binned.status()).as(binned.text()).isEqualTo(200);
    assertThat(get(address).status()).isEqualTo(404);
    assertThat(send("POST", address + "/restore", null, "").status()).isEqualTo(200);
    assertThat(get(address + "/revisions").text()).contains("changed control");
  }

  @Test
  void anotherSlugRenamesAndTheOldOneLeadsOn() throws IOException {
    ObjectNode kick = (ObjectNode) JSON.readTree(get(KICK).bytes());
    kick.put("slug", "ebb-kick");
    assertThat(send("PUT", KICK, "*", kick.toString()).status()).isEqualTo(200);
    Answer old = get(KICK);
    assertThat(old.status()).isEqualTo(308);
    assertThat(old.header("Location")).isEqualTo("/api/recipes/ebb-kick");
    kick.put("slug", "shingle-hat");
    JsonNode taken =
        expectProblem(
            send("PUT", "/api/recipes/ebb-kick", "*", kick.toString()), 409, "slug-taken");
    assertThat(taken.get("errors").get(0).get("pointer").asText()).isEqualTo("/slug");
  }

  @Test
  void theIdOfARecipeStays() throws IOException {
    ObjectNode kick = (ObjectNode) JSON.readTree(get(KICK).bytes());
    kick.put("id", "00000000-0000-4000-8000-000000000000");
    expectProblem(send("PUT", KICK, "*", kick.toString()), 422, "other-id");
    expectProblem(send("POST", "/api/recipes", null, get(KICK).text()), 409, "id-taken");
  }

  @Test
  void theBinAndBack() throws IOException {
    expectProblem(send("DELETE", KICK, null, ""), 428, null);
    Answer binned = send("DELETE", KICK, "\"1\"", "");
    assertThat(binned.status()).as(binned.text()).isEqualTo(200);
    expectProblem(get(KICK), 404, "in-bin");
    JsonNode bin = JSON.readTree(get("/api/bin").bytes());
    assertThat(bin.get("recipes").get(0).get("slug").asText()).isEqualTo("slack-tide-kick");
    String undo = JSON.readTree(binned.bytes()).get("undo").asText();
    assertThat(send("POST", undo, null, "").status()).isEqualTo(201);
    assertThat(get(KICK).status()).isEqualTo(200);
    expectProblem(send("POST", undo, null, ""), 409, "undone-already");
    expectProblem(send("POST", "/api/changes/99999/undo", null, ""), 404, "no-such-change");
  }

  @Test
  void manyAreTaggedInOneActOrNone() throws IOException {
    String tag =
        "{\"do\": \"tag\", \"recipes\": [\"slack-tide-kick\", \"NAME\"], \"add\": [\"act two\"],"
            + " \"remove\": [\"dry\"]}";
    expectProblem(
        send("POST", "/api/changes", null, tag.replace("NAME", "nobody")), 422, "no-such-recipe");
    assertThat(get(KICK).text()).doesNotContain("act two");
    Answer tagged = send("POST", "/api/changes", null, tag.replace("NAME", "shingle-hat"));
    assertThat(tagged.status()).as(tagged.text()).isEqualTo(201);
    JsonNode tags = JSON.readTree(get(KICK).bytes()).get("tags");
    assertThat(tags).extracting(JsonNode::asText).contains("act two").doesNotContain("dry");
    String undo = JSON.readTree(tagged.bytes()).get("undo").asText();
    send("POST", undo, null, "");
    assertThat(get(KICK).text()).doesNotContain("act two").contains("\"dry\"");
    expectProblem(
        send("POST", "/api/changes", null, "{\"do\": \"burn\", \"recipes\": [], \"x\": 1}"),
        422,
        "unknown-word");
  }

  @Test
  void anEarlierStateComesBack() throws IOException {
    String before = get(KICK).text();
    ObjectNode kick = (ObjectNode) JSON.readTree(before);
    kick.put("notes", "Something else.");
    send("PUT", KICK, "\"1\"", kick.toString());
    JsonNode first = JSON.readTree(get(KICK + "/revisions/1").bytes());
    assertThat(first.get("recipe")).isEqualTo(JSON.readTree(before));
    expectProblem(send("POST", KICK + "/revisions/1/restore", null, ""), 428, null);
    Answer back = send("POST", KICK + "/revisions/1/restore", "\"2\"", "");
    assertThat(back.status()).as(back.text()).isEqualTo(200);
    assertThat(get(KICK).text()).isEqualTo(before);
    expectProblem(get(KICK + "/revisions/9"), 404, "no-such-revision");
  }

  @Test
  void aChannelThatRecipesUseStaysAndTheyAreNamed() throws IOException {
    ObjectNode twin = (ObjectNode) JSON.readTree(get(TWIN).bytes());
    ((ObjectNode) twin.get("channels").get(0)).put("name", "quicker");
    JsonNode used = expectProblem(send("PUT", TWIN, "*", twin.toString()), 409, "in-use");
    assertThat(used.get("errors")).hasSizeGreaterThan(1);
    expectProblem(send("DELETE", TWIN, "*", ""), 409, "in-use");
  }

  @Test
  void aFormOfAnotherSiteWritesNothing() throws IOException {
    Answer form =
        Exchange.request(notebook.port(), "POST", "/api/recipes")
            .body("text/plain", "{\"title\": \"Tin bucket\"}".getBytes(StandardCharsets.UTF_8))
            .send();
    assertThat(form.status()).isEqualTo(403);
    Answer foreign =
        Exchange.request(notebook.port(), "DELETE", KICK)
            .header("If-Match", "*")
            .header("Origin", "http://elsewhere.example")
            .send();
    assertThat(foreign.status()).isEqualTo(403);
    assertThat(get(KICK).status()).isEqualTo(200);
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

  private static JsonNode expectProblem(Answer answer, int status, String code) throws IOException {
    assertThat(answer.status()).as(answer.text()).isEqualTo(status);
    assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
    JsonNode problem = JSON.readTree(answer.bytes());
    if (code != null) {
      assertThat(problem.get("errors").get(0).get("code").asText()).isEqualTo(code);
    }
    return problem;
  }
}
