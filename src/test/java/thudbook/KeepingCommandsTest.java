package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.storage.Database;
import thudbook.storage.keeping.Backups;

/** The commands that keep a notebook, beside a served one and without. Scenario tests. */
class KeepingCommandsTest {
  @TempDir private Path folder;

  private record Result(int code, String out, String err) {}

  private Result run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--data", folder.resolve("data").toString()));
    int code =
        Main.commandLine(new PrintWriter(out, true), new PrintWriter(err, true), Map.of())
            .execute(all.toArray(String[]::new));
    return new Result(code, out.toString(), err.toString());
  }

  @Test
  void backupAndVerifyWorkBesideAServerRestoreDoesNot() throws IOException {
    Path file = folder.resolve("copy.db");
    try (ServedNotebook served = ServedNotebook.in(folder.resolve("data"), Map.of())) {
      assertThat(served.port()).isPositive();
      Result verified = run("verify");
      assertThat(verified.err()).isEmpty();
      assertThat(verified.code()).isZero();
      assertThat(verified.out())
          .matches("Nothing is wrong: \\d+ gates, \\d\\d recipes, .* 0 photos\\R");
      assertThat(run("backup", file.toString()))
          .isEqualTo(new Result(0, "The notebook is copied to " + file + "\n", ""));
      assertThat(run("backup").out()).contains("backups/manual-");
      assertThat(run("backup", file.toString()).code()).isEqualTo(1);
      Result refused = run("restore", file.toString());
      assertThat(refused.code()).isEqualTo(1);
      assertThat(refused.err()).contains("is in use by a Thudbook").hasLineCount(1);
    }
    Result restored = run("restore", file.toString());
    assertThat(restored.err()).isEmpty();
    assertThat(restored.out())
        .contains("What was there before is kept in ", "is now that of " + file);
    assertThat(run("verify").code()).isZero();
  }

  @Test
  void whatIsWrongIsALineEachAndCodeOne() throws IOException {
    assertThat(run("verify").err()).contains("There is no notebook").hasLineCount(1);
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(data.resolve("thudbook.db"), "a shopping list, with a header of a line\n");
    for (String[] words :
        List.of(
            new String[] {"verify"}, new String[] {"backup"}, new String[] {"restore", "none"})) {
      Result result = run(words);
      assertThat(result.code()).isEqualTo(1);
      assertThat(result.err()).hasLineCount(1).doesNotContain("Exception");
    }
    assertThat(run("restore").code()).isEqualTo(2);
  }

  @Test
  void aServedNotebookIsBackedUpOncePerDayAndTheOldestGo() {
    AtomicReference<Instant> now = new AtomicReference<>(Instant.parse("2026-11-02T10:00:00Z"));
    try (Database database = Database.open(folder)) {
      Backups backups = database.backups();
      try (DailyBackups daily = new DailyBackups(backups, 2, now::get)) {
        for (int hour = 0; hour < 96; hour += 6) {
          daily.look();
          now.updateAndGet(then -> then.plus(Duration.ofHours(6)));
        }
      }
      assertThat(backups.all())
          .extracting(backup -> backup.at().toString())
          .containsExactly("2026-11-05T10:00:00Z", "2026-11-04T10:00:00Z");
    }
  }

  @Test
  void aServerMakesTheBackupByItself() throws Exception {
    Path data = folder.resolve("data");
    try (ServedNotebook served = ServedNotebook.in(data, Map.of())) {
      assertThat(served.port()).isPositive();
      for (int i = 0; i < 600 && Database.backups(data).all().isEmpty(); i++) {
        Thread.sleep(50);
      }
    }
    assertThat(Database.backups(data).all())
        .singleElement()
        .satisfies(it -> assertThat(it.at()).isEqualTo("2026-11-02T10:00:00Z"));
  }
}
