package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.access.Hands;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.Repredictions;
import thudbook.storage.keeping.Backups;
import thudbook.storage.keeping.DatabaseFile;
import thudbook.storage.keeping.Schema;

/** Scenario: backups, restoring, verifying, and a disk that takes nothing, on real files. */
class KeepingTest {
  private static final Instant NOON = Instant.parse("2026-11-02T12:00:00Z");
  private static final Path ORDERS = Path.of("src/test/resources/thudbook/storage");

  @TempDir Path folder;

  /** A notebook with one gate and two predicted recipes. */
  private static void fill(Database database) {
    Gate gate = Written.gate("keeper-twin", "Keeper twin");
    List<Recipe> recipes =
        List.of(
            Written.recipe("tide-kick", "Tide kick", List.of("Dry", "kick"), "keeper-twin"),
            Written.recipe("bell", "Bell", List.of("dry"), "keeper-twin"));
    Written.acts(database, () -> NOON, () -> {})
        .write(Written.writes(List.of(gate), recipes), Hands.OWNER, "a test");
  }

  @Test
  void aBackupIsAWholeNotebookMadeBesideAnOpenOne() {
    Path file;
    try (Database database = Database.open(folder)) {
      fill(database);
      file = Database.backups(folder).make(Backups.Occasion.MANUAL, NOON).file();
      assertThat(file)
          .isEqualTo(
              folder.resolve(
                  "backups/manual-2026-11-02T12-00-00Z-schema-" + Schema.NEWEST + ".db"));
      assertThat(Verification.of(file).wrong()).isEmpty();
      assertThat(Verification.of(file).count(Documents.RECIPE)).isEqualTo(2);
      assertThat(Verification.of(file).predictions()).isEqualTo(2);
    }
    assertThat(folder.resolve("backups")).isDirectoryContaining(found -> found.equals(file));
    assertThat(files(folder.resolve("backups"))).hasSize(1);
  }

  @Test
  void dailyBackupsAreDueAfterADayAndTheNewestAreKept() throws IOException {
    try (Database database = Database.open(folder)) {
      fill(database);
      Backups backups = database.backups();
      for (int day = 0; day < 5; day++) {
        Instant now = NOON.plus(Duration.ofDays(day));
        assertThat(backups.dailyDue(now)).isTrue();
        backups.make(Backups.Occasion.DAILY, now);
        assertThat(backups.dailyDue(now)).isFalse();
        assertThat(backups.dailyDue(now.plus(Duration.ofHours(23)))).isFalse();
      }
      // A clock that was once wrong must not end the backups.
      assertThat(backups.dailyDue(NOON.minus(Duration.ofDays(1)))).isTrue();
      backups.make(Backups.Occasion.MANUAL, NOON);
      Files.writeString(folder.resolve("backups/daily-left.db.unfinished"), "of a kill");
      backups.keepDaily(3);
      assertThat(backups.all())
          .extracting(Backups.Backup::at)
          .containsExactly(
              NOON.plus(Duration.ofDays(4)),
              NOON.plus(Duration.ofDays(3)),
              NOON.plus(Duration.ofDays(2)),
              NOON);
      assertThat(files(folder.resolve("backups"))).hasSize(4);
    }
  }

  @Test
  void aBackupNeverOverwritesAndAMissingNotebookIsSaid() throws IOException {
    try (Database database = Database.open(folder)) {
      Path file = Files.writeString(folder.resolve("there.db"), "something else");
      assertRefused(() -> database.backups().copyTo(file), "file-exists");
      assertThat(file).hasContent("something else");
    }
    Path nowhere = folder.resolve("nowhere");
    assertRefused(() -> Database.backups(nowhere).copyTo(folder.resolve("x.db")), "no-notebook");
    assertRefused(() -> Database.verify(nowhere), "no-notebook");
    assertThat(nowhere).doesNotExist();
  }

  @Test
  void aRestoredNotebookIsTheBackupAndTheFormerOneIsKept() {
    Path backup = folder.resolve("elsewhere/backup.db");
    Path data = folder.resolve("data");
    try (Database database = Database.open(data)) {
      fill(database);
      database.backups().copyTo(backup);
      Written.add(
          database,
          Stream.of(Written.added(Written.recipe("late", "Late", List.of(), "no"), null)));
      assertRefused(() -> Database.restore(backup, data, NOON), "folder-in-use");
    }
    Path kept = Database.restore(backup, data, NOON).orElseThrow();
    try (Database database = Database.open(data)) {
      assertThat(database.recipes().find("late")).isEmpty();
      assertThat(database.recipes().find("bell")).isPresent();
    }
    assertThat(Database.verify(data).wrong()).isEmpty();
    assertThat(kept).isEqualTo(data.resolve("thudbook-replaced-2026-11-02T12-00-00Z.db"));
    assertThat(Database.restore(kept, data, NOON.plusSeconds(1))).isPresent();
    try (Database database = Database.open(data)) {
      assertThat(database.recipes().find("late")).isPresent();
    }
  }

  @Test
  void aRestoreIntoANewFolderReplacesNothing() {
    Path backup = folder.resolve("backup.db");
    try (Database database = Database.open(folder.resolve("data"))) {
      fill(database);
      database.backups().copyTo(backup);
    }
    assertThat(Database.restore(backup, folder.resolve("new"), NOON)).isEmpty();
    assertThat(Database.verify(folder.resolve("new")).count(Documents.RECIPE)).isEqualTo(2);
  }

  @Test
  void aDamagedBackupIsRefusedAndChangesNothing() throws Exception {
    Path data = folder.resolve("data");
    Path backup = folder.resolve("backup.db");
    try (Database database = Database.open(data)) {
      fill(database);
      database.backups().copyTo(backup);
    }
    byte[] before = Files.readAllBytes(data.resolve("thudbook.db"));
    execute(backup, "UPDATE revision SET document = document || 'x' WHERE id = 1");
    assertRefused(() -> Database.restore(backup, data, NOON), "damaged");
    Files.writeString(backup, "a shopping list, long enough to have a header of sixteen bytes\n");
    assertRefused(() -> Database.restore(backup, data, NOON), "not-a-database");
    assertRefused(() -> Database.restore(folder.resolve("none"), data, NOON), "no-file");
    assertThat(data.resolve("thudbook.db")).hasBinaryContent(before);
    assertThat(files(data))
        .noneMatch(name -> name.contains("restoring") || name.contains("replaced"));
  }

  @Test
  void aNewerBackupIsRefused() throws Exception {
    Path backup = folder.resolve("backup.db");
    try (Database database = Database.open(folder.resolve("data"))) {
      fill(database);
      database.backups().copyTo(backup);
    }
    execute(
        backup,
        "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
            + " installed_by, execution_time, success) VALUES (99, '99', 'later', 'SQL', 'V.sql',"
            + " '', 0, 1)");
    assertRefused(() -> Database.restore(backup, folder.resolve("data"), NOON), "newer-schema");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      quoteCharacter = '`',
      value = {
        "UPDATE revision SET document = document || ' ' WHERE id = 1 @ does not have the hash",
        "UPDATE revision SET sha256 = replace(sha256, substr(sha256, 1, 1), 'x')"
            + " WHERE thing = (SELECT id FROM thing WHERE noun = 'gate') @ of a gate",
        "UPDATE thing SET title = 'Other' WHERE slug = 'bell' @ title is kept as Other",
        "UPDATE recipe_fact SET source_kind = 'fm' WHERE recipe = 2 @ source_kind is kept as fm",
        "DELETE FROM recipe_tag WHERE position = 2 @ tags is kept as [dry]",
        "UPDATE recipe_stage SET channel = 'slow' @ stages is kept as [keeper-twin, slow]",
        "UPDATE prediction SET hold = hold * 1.0000000000000002 @ not what is predicted today",
        "UPDATE prediction SET shape = zeroblob(384) @ not what is predicted today",
        "DELETE FROM prediction @ no row for its prediction",
        "UPDATE thing SET title = 'Other' WHERE noun = 'gate' @ title is kept as Other",
        "UPDATE recipe_fact SET envelope_decay = 0.2 @ envelope_decay is kept as 0.2",
        "DELETE FROM recipe_fact @ no row of what it is searched by",
        "DELETE FROM recipe_words WHERE rowid = 6 @ words are not found in the index",
        "INSERT INTO recipe_parent VALUES (2, 'nobody') @ parent is kept as nobody",
        "INSERT INTO photo VALUES ('"
            + "0000000000000000000000000000000000000000000000000000000000000000"
            + "', 'jpg', 1, 1, 0, x'01', x'01') @ do not have the hash"
      })
  void whatIsWrongIsFound(String sql, String expected) throws Exception {
    try (Database database = Database.open(folder)) {
      fill(database);
    }
    execute(folder.resolve("thudbook.db"), sql);
    assertThat(Database.verify(folder).wrong()).isNotEmpty().allMatch(it -> it.contains(expected));
  }

  @Test
  void aDanglingReferenceAndADamagedPageAreFound() throws Exception {
    try (Database database = Database.open(folder)) {
      fill(database);
    }
    Path file = folder.resolve("thudbook.db");
    execute(file, "INSERT INTO thing_slug VALUES ('recipe', 'nobody', 99)");
    assertThat(Database.verify(folder).wrong()).singleElement().asString().contains("thing_slug");
    execute(file, "DELETE FROM thing_slug WHERE thing = 99");
    byte[] bytes = Files.readAllBytes(file);
    int page = rootOf(file, "revision");
    for (int i = 0; i < 400; i++) {
      bytes[4096 * (page - 1) + i] ^= 0x55;
    }
    Files.write(file, bytes);
    try {
      assertThat(Database.verify(folder).wrong()).isNotEmpty();
    } catch (Refusal refusal) {
      assertThat(refusal.faults().get(0).code()).isEqualTo("not-a-database");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4})
  @Timeout(value = 2, unit = TimeUnit.MINUTES)
  void aNotebookOfAnEarlierOrderIsBackedUpMigratedAndSound(int order) throws Exception {
    // Opening even for reading leaves files beside it, so only the copy is opened.
    Path file = Files.copy(ORDERS.resolve("order-" + order + ".db"), folder.resolve("thudbook.db"));
    long recipes;
    try (Connection connection = DatabaseFile.open(file)) {
      assertThat(Schema.versionOf(connection)).isEqualTo(order);
      recipes = DatabaseFile.number(connection, "SELECT count(*) FROM recipe").orElseThrow();
      assertThat(recipes).isPositive();
    }
    assertRefused(() -> Database.verify(folder), "older-schema");
    try (Database database = Database.open(folder)) {
      assertThat(database.backups().all())
          .singleElement()
          .satisfies(
              backup -> {
                assertThat(backup.occasion()).isEqualTo(Backups.Occasion.MIGRATION);
                assertThat(backup.schema()).isEqualTo(order);
              });
      try (Repredictions work = new Repredictions(database.predictions(), database.gates())) {
        work.start();
        while (!database.predictions().marked(0, 1).isEmpty()) {
          Thread.sleep(20);
        }
      }
      assertThat(Database.verify(folder).wrong()).isEmpty();
      assertThat(Database.verify(folder).count(Documents.RECIPE)).isEqualTo(recipes);
    }
    Path backup = Database.backups(folder).all().get(0).file();
    Database.restore(backup, folder.resolve("restored"), NOON);
    assertThat(Database.verify(folder.resolve("restored")).count(Documents.RECIPE))
        .isEqualTo(recipes);
  }

  /** Fails when a migration that was released is edited. */
  @Test
  void aNotebookOfThisOrderIsOpenedAsItIs() throws Exception {
    Files.copy(ORDERS.resolve("order-" + Schema.NEWEST + ".db"), folder.resolve("thudbook.db"));
    try (Database database = Database.open(folder)) {
      assertThat(database.backups().all()).isEmpty();
      assertThat(database.library().catalogue().size()).isPositive();
    }
    assertThat(Database.verify(folder).wrong()).isEmpty();
  }

  @Test
  void aFullDiskRefusesTheSaveAndNothingIsHalfWritten() {
    try (Database database = Database.open(folder)) {
      fill(database);
      Connections connections = database.connections();
      long pages = connections.write(db -> (Number) db.fetchValue("PRAGMA page_count")).longValue();
      connections.<Object>write(db -> db.fetchValue("PRAGMA max_page_count = " + (pages + 1)));
      for (int round = 0; round < 3; round++) {
        assertRefused(() -> Written.add(database, many("full")), "disk-full");
      }
      assertThat(Database.verify(folder).wrong()).isEmpty();
      assertThat(Database.verify(folder).count(Documents.RECIPE)).isEqualTo(2);
      connections.<Object>write(db -> db.fetchValue("PRAGMA max_page_count = 1000000"));
      Written.add(database, many("room"));
      assertThat(Database.verify(folder).count(Documents.RECIPE)).isEqualTo(302);
    }
  }

  /** Recipes for which a page or two do not do. */
  private static Stream<Write<Recipe>> many(String slug) {
    return Stream.iterate(0, i -> i < 300, i -> i + 1)
        .map(i -> Written.added(Written.recipe(slug + "-" + i, "Many", List.of(), "no"), null));
  }

  @Test
  void aDatabaseThatMayNotBeWrittenToRefusesTheSave() {
    try (Database database = Database.open(folder)) {
      fill(database);
      assertRefused(
          () ->
              database
                  .connections()
                  .<Integer>write(
                      db -> db.execute("PRAGMA query_only = 1") + db.execute("DELETE FROM change")),
          "read-only");
      assertRefused(() -> Written.add(database, many("closed")), "read-only");
      assertThat(database.recipes().find("bell")).isPresent();
    }
    assertThat(Database.verify(folder).wrong()).isEmpty();
    assertThat(Database.verify(folder).count(Documents.RECIPE)).isEqualTo(2);
  }

  @Test
  void aFolderThatMayNotBeWrittenToTakesNoBackup() throws IOException {
    try (Database database = Database.open(folder.resolve("data"))) {
      fill(database);
      Path closed = Files.createDirectory(folder.resolve("closed"));
      assertThat(closed.toFile().setWritable(false)).isTrue();
      try {
        assumeTrue(
            !Files.isWritable(closed),
            "skipped: the superuser writes everywhere, whatever the permissions say");
        assertThatThrownBy(() -> database.backups().copyTo(closed.resolve("backup.db")))
            .isInstanceOfSatisfying(
                Refusal.class,
                refusal -> assertThat(refusal.kind()).isEqualTo(Refusal.Kind.NOT_STORED));
        assertThat(files(closed)).isEmpty();
      } finally {
        assertThat(closed.toFile().setWritable(true)).isTrue();
      }
    }
  }

  private static void assertRefused(Runnable act, String code) {
    assertThatThrownBy(act::run)
        .isInstanceOfSatisfying(
            Refusal.class, refusal -> assertThat(refusal.faults().get(0).code()).isEqualTo(code));
  }

  private static List<String> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static int rootOf(Path file, String table) throws SQLException {
    try (Connection connection = DatabaseFile.open(file)) {
      String sql = "SELECT rootpage FROM sqlite_schema WHERE name = '" + table + "'";
      return DatabaseFile.number(connection, sql).orElseThrow().intValue();
    }
  }

  private static void execute(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
