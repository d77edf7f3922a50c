package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.Exchange.Answer;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.documents.Loudspeaker;
import thudbook.storage.Database;
import thudbook.storage.OtherProcess;

/** Scenario: a server is killed while things of a made-up noun are saved. */
class MadeUpNounKilledTest {
  private static final int ROUNDS = 5;

  @TempDir private Path folder;

  @Test
  @Timeout(value = 5, unit = TimeUnit.MINUTES)
  void noAnsweredSaveIsLostWhenTheServerIsKilled() throws Exception {
    Random random = new Random(20_261_128);
    Map<String, Integer> answered = new ConcurrentHashMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      int before = answered.size();
      killWhileSaving(folder, "r" + round + "-", 50 + random.nextInt(250), answered);
      assertThat(answered).as("saves of round %d", round).hasSizeGreaterThan(before);
      assertThat(MadeUpNounTest.verified(folder).wrong()).as("round %d", round).isEmpty();
    }
    try (Database database = Database.open(folder, List.of(Loudspeaker.NOUN.documents()))) {
      Store<Loudspeaker> store = database.things(Loudspeaker.NOUN.documents());
      answered.forEach(
          (slug, state) -> {
            Kept<Loudspeaker> kept = store.find(slug).orElseThrow();
            int revisions = store.revisions(kept.id(), 0, 10).size();
            // A change that was not answered may be there or not.
            assertThat(revisions).as(slug).isBetween(state, 2);
            assertThat(kept.thing().lowestHertz()).as(slug).isEqualTo((double) revisions);
          });
    }
  }

  private static void killWhileSaving(
      Path folder, String name, int milliseconds, Map<String, Integer> answered) throws Exception {
    Process server = OtherProcess.start(MadeUpNounKilledTest.class, folder.toString());
    try {
      int port = Integer.parseInt(server.inputReader(StandardCharsets.UTF_8).readLine());
      int before = answered.size();
      Thread client = new Thread(() -> saveUntilNobodyAnswers(port, name, answered));
      client.start();
      while (answered.size() == before && client.isAlive()) {
        Thread.sleep(5);
      }
      Thread.sleep(milliseconds);
      server.destroyForcibly();
      client.join();
    } finally {
      server.destroyForcibly().waitFor();
    }
  }

  private static void saveUntilNobodyAnswers(int port, String name, Map<String, Integer> answered) {
    try {
      for (int i = 0; ; i++) {
        String slug = name + i;
        Answer added =
            MadeUpNounTest.json(
                port, "POST", "/api/loudspeakers", null, MadeUpNounTest.body(slug, slug, 1));
        if (added.status() != 201) {
          return;
        }
        answered.put(slug, 1);
        String address = "/api/loudspeakers/" + slug;
        if (MadeUpNounTest.json(port, "PUT", address, "\"1\"", MadeUpNounTest.body(slug, slug, 2))
                .status()
            != 200) {
          return;
        }
        answered.put(slug, 2);
      }
    } catch (IOException | RuntimeException e) {
      // Killed: what was sent last has no answer, or half of one.
    }
  }

  /** Serves a folder until it is killed, and tells its port. */
  public static void main(String[] arguments) throws Exception {
    ServedNotebook served =
        ServedNotebook.in(Path.of(arguments[0]), MadeUpNounTest.NO_SAMPLES, MadeUpNounTest.NOUNS);
    System.out.println(served.port());
    Thread.currentThread().join();
  }
}
