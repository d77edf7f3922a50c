package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.equipment.Gate;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.recipes.Recipe;

/** Each store of an opened notebook, and what it has read, is there once. Property tests. */
class OpenedNotebookTest {
  @TempDir private Path folder;

  @Test
  void whoeverAsksGetsTheSameStores() {
    try (Database database = Database.open(folder)) {
      List<Function<Stores, Object>> parts =
          List.of(
              Stores::recipes,
              Stores::gates,
              Stores::modules,
              Stores::sessions,
              Stores::changes,
              Stores::drafts,
              Stores::recalls,
              Stores::library,
              Stores::marks,
              Stores::shelves,
              Stores::predictions,
              Stores::documents,
              Stores::photos,
              // It holds the index of recent words.
              stores -> stores.library().search());
      for (Function<Stores, Object> part : parts) {
        assertThat(part.apply(database)).isSameAs(part.apply(database));
      }
    }
  }

  @Test
  void twoCallersGetWhatWasReadOnce() {
    try (Database database = Database.open(folder)) {
      Gate gate = Written.gate("keeper-twin", "Keeper twin");
      Recipe recipe = Written.recipe("bell", "Bell", List.of("dry"), "keeper-twin");
      Acts acts =
          Acts.on(database, InstantSource.fixed(Instant.parse("2026-11-02T12:00:00Z")), () -> {});
      acts.changes()
          .write(Written.writes(List.of(gate), List.of(recipe)), new Author("tester"), "a test");
      Stores one = database;
      Stores other = database;
      assertThat(one.recipes().find("bell").orElseThrow().thing())
          .isEqualTo(recipe)
          .isSameAs(other.recipes().find(recipe.id().toString()).orElseThrow().thing());
      assertThat(one.gates().find("keeper-twin").orElseThrow().thing())
          .isEqualTo(gate)
          .isSameAs(other.gates().all().get(0).thing())
          .isSameAs(other.gates().revisions(gate.id(), 0, 1).get(0).thing());
    }
  }

  /** Also where both begin before either has read. */
  @Test
  void callersAtTheSameTimeGetOneObject() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      for (int round = 0; round < 200; round++) {
        CyclicBarrier together = new CyclicBarrier(8);
        ReadTexts<Object> read = new ReadTexts<>(text -> new Object());
        Callable<Object> caller =
            () -> {
              together.await();
              return read.of("a text");
            };
        Set<Object> different = Collections.newSetFromMap(new IdentityHashMap<>());
        for (Future<Object> each : threads.invokeAll(Collections.nCopies(8, caller))) {
          different.add(each.get());
        }
        assertThat(different).hasSize(1);
      }
    } finally {
      threads.shutdownNow();
    }
  }
}
