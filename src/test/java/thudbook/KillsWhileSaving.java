package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import thudbook.Exchange.Answer;
import thudbook.changes.Kept;
import thudbook.recipes.Recipe;
import thudbook.storage.Database;
import thudbook.storage.OtherProcess;

/**
 * A server is killed while four clients save, again and again in one folder. What was answered is
 * there afterwards, and nothing is damaged.
 */
public final class KillsWhileSaving {
  private static final int CLIENTS = 4;
  private static final String READY = "Thudbook is ready at ";

  private final Path folder;

  /** The state of each recipe that was answered last, by its slug: 1 added, 2 changed. */
  private final Map<String, Integer> answered = new ConcurrentHashMap<>();

  /** Answers that no client may get. */
  private final List<String> unexpected = new CopyOnWriteArrayList<>();

  /** Kills servers of a folder. */
  public KillsWhileSaving(Path folder) {
    this.folder = folder;
  }

  /**
   * Kills so many servers at seeded moments.
   *
   * @return how many saves were answered; none of them is lost
   */
  public int rounds(int rounds) throws Exception {
    Random random = new Random(20_261_125);
    for (int round = 0; round < rounds; round++) {
      Set<String> before = Set.copyOf(answered.keySet());
      killWhileSaving(round, 50 + random.nextInt(350));
      assertThat(unexpected).isEmpty();
      assertThat(answered.size()).as("saves of round %d", round).isGreaterThan(before.size());
      assertThat(Database.verify(folder).wrong()).as("round %d", round).isEmpty();
      boolean last = round == rounds - 1;
      try (Database database = Database.open(folder)) {
        answered.forEach(
            (slug, state) -> {
              if (last || !before.contains(slug)) {
                assertKept(database, slug, state);
              }
            });
      }
    }
    return answered.values().stream().mapToInt(Integer::intValue).sum();
  }

  private static void assertKept(Database database, String slug, int state) {
    Kept<Recipe> stored = database.recipes().find(slug).orElseThrow(() -> lost(slug));
    // A change that was not answered may be there or not.
    assertThat(stored.thing().notes()).as(slug).isIn(state == 1 ? List.of("1", "2") : List.of("2"));
    assertThat(database.recipes().revisions(stored.thing().id(), 0, 10))
        .hasSize(Integer.parseInt(stored.thing().notes()));
  }

  private static AssertionError lost(String slug) {
    return new AssertionError(slug + " was answered and is lost");
  }

  private void killWhileSaving(int round, int milliseconds) throws Exception {
    Process server =
        OtherProcess.start(
            Main.class, "serve", "--port", "0", "--samples", "no", "--data", folder.toString());
    try {
      String ready = server.inputReader(StandardCharsets.UTF_8).readLine();
      assertThat(ready).startsWith(READY);
      int port = URI.create(ready.substring(READY.length())).getPort();
      List<Thread> clients = new ArrayList<>();
      for (int i = 0; i < CLIENTS; i++) {
        String name = "r" + round + "-c" + i + "-";
        clients.add(new Thread(() -> saveUntilNobodyAnswers(port, name)));
      }
      int before = answered.size();
      clients.forEach(Thread::start);
      while (answered.size() == before) {
        Thread.sleep(5);
      }
      Thread.sleep(milliseconds);
      server.destroyForcibly();
      for (Thread client : clients) {
        client.join();
      }
    } finally {
      server.destroyForcibly().waitFor();
    }
  }

  private void saveUntilNobodyAnswers(int port, String name) {
    try {
      for (int i = 0; ; i++) {
        String slug = name + i;
        save(port, "POST", "/api/recipes", slug, 1);
        save(port, "PUT", "/api/recipes/" + slug, slug, 2);
      }
    } catch (IOException | RuntimeException e) {
      // Killed: what was sent last has no answer, or half of one.
    }
  }

  private void save(int port, String method, String path, String slug, int state)
      throws IOException {
    String json =
        "{\"slug\": \"" + slug + "\", \"title\": \"" + slug + "\", \"notes\": \"" + state + "\"}";
    Answer answer =
        Exchange.request(port, method, path)
            .header("If-Match", state == 1 ? null : "\"1\"")
            .body("application/json", json.getBytes(StandardCharsets.UTF_8))
            .send();
    if (answer.status() != (state == 1 ? 201 : 200)) {
      unexpected.add(answer.status() + " " + answer.text());
      throw new IOException("not saved");
    }
    answered.put(slug, state);
  }
}
