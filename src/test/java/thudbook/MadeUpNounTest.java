package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange.Answer;
import thudbook.access.Hands;
import thudbook.changes.Keeper;
import thudbook.changes.Write;
import thudbook.documents.Loudspeaker;
import thudbook.notebook.Acts;
import thudbook.notebook.AddedNoun;
import thudbook.storage.Database;
import thudbook.storage.Verification;

/**
 * Property: a noun of which there is nothing but a reader, a writer and a rule has all that every
 * noun has, in a served notebook.
 */
class MadeUpNounTest {
  static final List<AddedNoun<?>> NOUNS = List.of(Loudspeaker.NOUN);
  static final Map<String, String> NO_SAMPLES = Map.of("samples", "no");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int MANY = 1001;
  private static final String BOUNDARY = "between-files";

  private static final String DOCUMENT =
      """
      ---
      thudbook: loudspeaker/1
      id: 7b1f3c52-0d11-4c57-9c3e-2a7f60f6a001
      slug: left-one
      title: Left one
      place: left of the desk
      lowest: 45 Hz
      ---
      Stands on the floor.
      """;

  @TempDir private Path folder;

  private ServedNotebook notebook;

  @BeforeEach
  void serve() throws IOException {
    notebook = ServedNotebook.in(folder, NO_SAMPLES, NOUNS);
  }

  @AfterEach
  void stop() {
    notebook.close();
  }

  @Test
  void jsonRoutesWriteReadChangeAndGoBack() throws IOException {
    Answer added = json("POST", "/api/loudspeakers", null, body("Left one", "left", 45));
    assertThat(added.status()).isEqualTo(201);
    assertThat(added.header("Location")).isEqualTo("/api/loudspeakers/left-one");
    assertThat(added.header("ETag")).isEqualTo("\"1\"");

    String address = "/api/loudspeakers/left-one";
    Answer changed = json("PUT", address, "\"1\"", body("Left one", "left", 40));
    assertThat(changed.status()).isEqualTo(200);
    assertThat(json("PUT", address, "\"1\"", body("Left one", "left", 30)).status()).isEqualTo(412);
    assertThat(read(address).get("lowest").asDouble()).isEqualTo(40);
    assertThat(get(address + "/document").text())
        .contains("thudbook: loudspeaker/1", "lowest: 40 Hz");
    assertThat(read("/api/loudspeakers").get("loudspeakers")).hasSize(1);

    JsonNode revisions = read(address + "/revisions").get("revisions");
    assertThat(revisions).hasSize(2);
    assertThat(revisions.get(0).get("what").asText()).contains("lowest");
    assertThat(read(address + "/revisions/1").get("loudspeaker").get("lowest").asDouble())
        .isEqualTo(45);
    Answer back = json("POST", address + "/revisions/1/restore", "\"2\"", "");
    assertThat(back.status()).isEqualTo(200);
    assertThat(read(address).get("lowest").asDouble()).isEqualTo(45);
  }

  @Test
  void theRuleIsAskedWhereverThingsComeFrom() throws IOException {
    assertThat(json("POST", "/api/loudspeakers", null, body("One", "left", 45)).status())
        .isEqualTo(201);
    Answer second = json("POST", "/api/loudspeakers", null, body("Two", "left", 45));
    assertThat(second.status()).isEqualTo(409);
    assertThat(second.text()).contains("One stands at left already.");

    assertThat(json("DELETE", "/api/loudspeakers/one", "\"1\"", "").status()).isEqualTo(200);
    assertThat(json("POST", "/api/loudspeakers", null, body("Two", "left", 45)).status())
        .isEqualTo(201);
    Answer out = json("POST", "/api/loudspeakers/one/restore", null, "");
    assertThat(out.status()).isEqualTo(409);
    assertThat(out.text()).contains("Two stands at left already.");
  }

  @Test
  void theBinAndUndoKnowIt() throws IOException {
    json("POST", "/api/loudspeakers", null, body("Left one", "left", 45));
    long binned = change(json("DELETE", "/api/loudspeakers/left-one", "\"1\"", ""));
    JsonNode lying = read("/api/bin").get("loudspeakers");
    assertThat(lying).hasSize(1);
    String id = lying.get(0).get("id").asText();
    assertThat(get("/bin").text()).contains("Loudspeakers", "/bin/loudspeakers/" + id);
    assertThat(get("/loudspeakers/left-one").text()).contains("This lies in the");

    assertThat(json("POST", "/api/changes/" + binned + "/undo", null, "").status()).isEqualTo(201);
    assertThat(read("/api/bin").get("loudspeakers")).isEmpty();

    Answer page = form("/loudspeakers/left-one/bin", "version=3");
    assertThat(page.status()).isEqualTo(303);
    assertThat(get(page.header("Location")).text()).contains("/loudspeakers/left-one");
    assertThat(form("/bin/loudspeakers/" + id, "").status()).isEqualTo(303);
    assertThat(read("/api/loudspeakers").get("loudspeakers")).hasSize(1);

    String address = "/api/loudspeakers/left-one";
    assertThat(json("PUT", address, "\"5\"", body("Other", "left", 9)).status()).isEqualTo(200);
    long changed = read(address + "/revisions").get("revisions").get(0).get("change").asLong();
    assertThat(json("POST", "/api/changes/" + changed + "/undo", null, "").status()).isEqualTo(201);
    assertThat(read("/api/loudspeakers/left-one").get("title").asText()).isEqualTo("Left one");
  }

  @Test
  void allThatLiesInTheBinIsListed() throws IOException {
    notebook.close();
    try (Database database = Database.open(folder, List.of(Loudspeaker.NOUN.documents()))) {
      Keeper<Loudspeaker> keeper =
          Acts.on(database, InstantSource.system(), () -> {}, NOUNS)
              .changes()
              .keeper(Loudspeaker.NOUN.documents());
      List<Loudspeaker> many =
          IntStream.range(0, MANY)
              .mapToObj(i -> "n" + i)
              .map(name -> new Loudspeaker(UUID.randomUUID(), name, name, name, null, ""))
              .toList();
      keeper.write(
          many.stream().map(one -> Write.added(keeper.noun(), one)).toList(), Hands.OWNER, "test");
      keeper.bin(many.stream().map(Loudspeaker::id).toList(), Hands.OWNER);
    }
    serve();
    assertThat(read("/api/bin").get("loudspeakers")).hasSize(MANY);
    assertThat(get("/bin").text().split("action=\"/bin/loudspeakers/", -1)).hasSize(MANY + 1);
  }

  @Test
  void documentsComeInAndGoOut() throws IOException {
    Answer look = share("left.md", DOCUMENT.getBytes(StandardCharsets.UTF_8));
    assertThat(look.status()).isEqualTo(303);
    assertThat(get(look.header("Location")).text()).contains("Left one", "loudspeaker, left.md");
    Answer taken = form(look.header("Location"), "take=0");
    assertThat(taken.status()).isEqualTo(303);
    assertThat(get("/api/loudspeakers/left-one/document").text()).isEqualTo(DOCUMENT);

    String inTheWay = DOCUMENT.replace("a001", "a002").replace("left-one", "another");
    Answer refused = share("another.md", inTheWay.getBytes(StandardCharsets.UTF_8));
    assertThat(get(refused.header("Location")).text())
        .contains("in conflict", "Left one stands at left of the desk already.");
    Answer posted =
        Exchange.request(notebook.port(), "POST", "/api/documents")
            .body(
                "text/markdown",
                inTheWay.replace("of the desk", "").getBytes(StandardCharsets.UTF_8))
            .send();
    assertThat(posted.status()).isEqualTo(201);
    assertThat(posted.header("Location")).isEqualTo("/api/loudspeakers/another");

    Answer zip = get("/api/documents");
    assertThat(new String(zip.bytes(), StandardCharsets.ISO_8859_1))
        .contains("loudspeakers/left-one.md", "loudspeakers/another.md");
    Answer again = share("all.zip", zip.bytes());
    assertThat(get(again.header("Location")).text()).contains("same as here");

    long change = Long.parseLong(taken.header("Location").replace("/changes/", ""));
    assertThat(json("POST", "/api/changes/" + change + "/undo", null, "").status()).isEqualTo(201);
    assertThat(read("/api/bin").get("loudspeakers")).hasSize(1);
  }

  @Test
  void theHistoryPageTellsWhatDiffersAndGoesBack() throws IOException {
    json("POST", "/api/loudspeakers", null, body("Left one", "left", 45));
    json("PUT", "/api/loudspeakers/left-one", "\"1\"", body("Left one", "right", 45));
    assertThat(get("/loudspeakers").text()).contains("/loudspeakers/left-one");
    String address = "/loudspeakers/left-one/history";
    assertThat(get(address).text()).contains("Revision 2", "place left → right");
    assertThat(get(address + "/1").text()).contains("Revision 1", "place: left\n");
    assertThat(form(address + "/1/restore", "version=1").status()).isEqualTo(412);
    assertThat(form(address + "/1/restore", "version=2").status()).isEqualTo(303);
    assertThat(get("/loudspeakers/left-one").text()).contains("place: left\n");
  }

  @Test
  void verificationLooksAtItsTextsAndColumns() throws Exception {
    json("POST", "/api/loudspeakers", null, body("Left one", "left", 45));
    Verification.Findings found = verified(folder);
    assertThat(found.wrong()).isEmpty();
    assertThat(found.count(Loudspeaker.NOUN.documents())).isEqualTo(1);
    // Who does not know the noun is told so.
    assertThat(Database.verify(folder).wrong())
        .singleElement()
        .asString()
        .contains("does not know what a loudspeaker is");

    notebook.close();
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("thudbook.db"));
        Statement statement = connection.createStatement()) {
      statement.execute("UPDATE thing SET title = 'Other' WHERE noun = 'loudspeaker'");
    }
    assertThat(verified(folder).wrong())
        .singleElement()
        .asString()
        .startsWith("loudspeaker left-one: its title is kept as Other");
    serve();
  }

  static Verification.Findings verified(Path folder) {
    return Database.verify(folder, List.of(Loudspeaker.NOUN.documents()));
  }

  /** A loudspeaker as JSON. */
  static String body(String title, String place, int hertz) {
    return "{\"title\": \""
        + title
        + "\", \"place\": \""
        + place
        + "\", \"lowest\": "
        + hertz
        + "}";
  }

  private Answer json(String method, String path, String version, String body) throws IOException {
    return json(notebook.port(), method, path, version, body);
  }

  /**
   * Sends JSON.
   *
   * @param version the entity tag that is meant; null: none
   */
  static Answer json(int port, String method, String path, String version, String body)
      throws IOException {
    return Exchange.request(port, method, path)
        .header("If-Match", version)
        .body("application/json", body.getBytes(StandardCharsets.UTF_8))
        .send();
  }

  private static long change(Answer answer) throws IOException {
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return JSON.readTree(answer.bytes()).get("change").asLong();
  }

  private Answer get(String path) throws IOException {
    return Exchange.get(notebook.port(), path);
  }

  private JsonNode read(String path) throws IOException {
    Answer answer = get(path);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return JSON.readTree(answer.bytes());
  }

  private Answer form(String path, String fields) throws IOException {
    return posted(
        path, "application/x-www-form-urlencoded", fields.getBytes(StandardCharsets.UTF_8));
  }

  private Answer share(String name, byte[] content) throws IOException {
    String disposition = "form-data; name=\"files\"; filename=\"" + name + "\"";
    String head = "--" + BOUNDARY + "\r\nContent-Disposition: " + disposition + "\r\n\r\n";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.writeBytes(head.getBytes(StandardCharsets.UTF_8));
    body.writeBytes(content);
    body.writeBytes(("\r\n--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return posted(
        "/share/imports", "multipart/form-data; boundary=" + BOUNDARY, body.toByteArray());
  }

  private Answer posted(String path, String type, byte[] body) throws IOException {
    return Exchange.request(notebook.port(), "POST", path)
        .header("Origin", "http://127.0.0.1:" + notebook.port())
        .body(type, body)
        .send();
  }
}
