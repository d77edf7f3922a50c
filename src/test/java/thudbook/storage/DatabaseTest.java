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
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import thudbook.quantities.Refusal;
import thudbook.storage.keeping.Schema;

/** Scenario: real data folders are opened, locked, refused and closed. */
class DatabaseTest {
  @TempDir Path folder;

  @Test
  void aMissingFolderIsCreatedAndMigrated() {
    Path nested = folder.resolve("a/b/c");
    try (Database database = Database.open(nested)) {
      assertThat(database.changes().isEmpty()).isTrue();
      assertThat(database.schemaVersion()).isEqualTo(Schema.NEWEST);
      assertThat(pragma(database, "integrity_check")).isEqualTo("ok");
    }
    assertThat(nested.resolve("thudbook.db")).isNotEmptyFile();
  }

  @Test
  void theNewestMigrationIsTheOneThatIsKnown() throws IOException {
    Pattern named = Pattern.compile("V(\\d+)__[a-z_]+\\.sql");
    try (Stream<Path> files = Files.list(Path.of("migrations"))) {
      List<Integer> numbers =
          files
              .map(file -> named.matcher(file.getFileName().toString()))
              .peek(name -> assertThat(name.matches()).isTrue())
              .map((Matcher name) -> Integer.parseInt(name.group(1)))
              .sorted()
              .toList();
      assertThat(numbers).last().isEqualTo(Schema.NEWEST);
    }
  }

  @Test
  void whatIsWrittenIsThereWhenItIsOpenedAgain() {
    try (Database database = Database.open(folder)) {
      Written.add(
          database, Stream.of(Written.unread(Written.recipe("a", "A", List.of(), "g"), null)));
    }
    try (Database database = Database.open(folder)) {
      assertThat(database.recipes().slugTaken("a")).isTrue();
      assertThat(database.changes().isEmpty()).isFalse();
    }
  }

  @Test
  void closingLeavesOneFileAndNoLog() {
    try (Database database = Database.open(folder)) {
      Written.add(
          database, Stream.of(Written.unread(Written.recipe("a", "A", List.of(), "g"), null)));
      assertThat(folder.resolve("thudbook.db-wal")).isNotEmptyFile();
    }
    assertThat(folder.resolve("thudbook.db-wal")).doesNotExist();
  }

  @Test
  void thePragmasAreInForce() {
    try (Database database = Database.open(folder)) {
      Connections connections = database.connections();
      for (String pragma : List.of("journal_mode", "foreign_keys")) {
        String expected = pragma.equals("journal_mode") ? "wal" : "1";
        assertThat(connections.<String>write(db -> db.fetchValue("PRAGMA " + pragma).toString()))
            .isEqualTo(expected);
        assertThat(pragma(database, pragma)).isEqualTo(expected);
      }
      // 2 is FULL: a commit is on the disk before it is answered.
      assertThat(connections.<Object>write(db -> db.fetchValue("PRAGMA synchronous"))).isEqualTo(2);
      assertThat(connections.<Object>write(db -> db.fetchValue("PRAGMA journal_size_limit")))
          .hasToString("8388608");
      assertThat(pragma(database, "query_only")).isEqualTo("1");
    }
  }

  @Test
  void aReaderCannotWrite() {
    try (Database database = Database.open(folder)) {
      assertThatThrownBy(
              () -> database.connections().<Integer>read(db -> db.execute("DELETE FROM change")))
          .isInstanceOf(DataAccessException.class)
          .hasMessageContaining("readonly");
    }
  }

  @Test
  void aWriteHoldsTheWriteLockFromItsBeginning() throws SQLException {
    try (Database database = Database.open(folder);
        Connection other = connection();
        Statement statement = other.createStatement()) {
      statement.execute("PRAGMA busy_timeout = 0");
      database
          .connections()
          .<Object>write(
              db -> {
                db.fetchValue("SELECT count(*) FROM change");
                assertThatThrownBy(() -> statement.execute("BEGIN IMMEDIATE"))
                    .hasMessageContaining("SQLITE_BUSY");
                return db;
              });
      statement.execute("BEGIN IMMEDIATE");
      statement.execute("ROLLBACK");
    }
  }

  @Test
  void aFailedWriteLeavesNothing() {
    try (Database database = Database.open(folder)) {
      assertThatThrownBy(
              () ->
                  database
                      .connections()
                      .<Object>write(
                          db -> {
                            db.execute(
                                "INSERT INTO change (at, author, what) VALUES (0, 'a', 'b')");
                            throw new IllegalStateException("on purpose");
                          }))
          .hasMessage("on purpose");
      assertThat(database.changes().isEmpty()).isTrue();
    }
  }

  @Test
  void aFolderIsOpenedOnceAtATime() {
    try (Database database = Database.open(folder)) {
      assertThat(database.changes().isEmpty()).isTrue();
      assertRefused(folder, "folder-in-use", "is in use by a Thudbook that is running");
    }
    Database.open(folder).close();
  }

  @Test
  @Timeout(value = 2, unit = TimeUnit.MINUTES)
  void aFolderThatAnotherProcessHasIsRefusedUntilThatIsKilled() throws Exception {
    Process other = OtherProcess.start(HoldsAFolder.class, folder.toString());
    try {
      assertThat(other.inputReader().readLine()).isEqualTo("open");
      assertRefused(folder, "folder-in-use", "is in use by a Thudbook that is running");
    } finally {
      other.destroyForcibly().waitFor();
    }
    Database.open(folder).close();
  }

  /** Opens the folder and holds it until it is killed. */
  static final class HoldsAFolder {
    private HoldsAFolder() {}

    @SuppressWarnings("SystemOut") // how the other process tells that it is ready
    public static void main(String[] folder) throws InterruptedException {
      try (Database database = Database.open(Path.of(folder[0]))) {
        System.out.println(database.changes().isEmpty() ? "open" : "not empty");
        Thread.sleep(TimeUnit.MINUTES.toMillis(2));
      }
    }
  }

  @Test
  void aNewerSchemaIsRefusedAndLeftAlone() throws SQLException {
    Database.open(folder).close();
    execute(
        "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
            + " installed_by, execution_time, success)"
            + " VALUES (99, '"
            + (Schema.NEWEST + 1)
            + "', 'later', 'SQL', 'V.sql', '', 0, 1)");
    assertRefused(folder, "newer-schema", "was written by a newer Thudbook");
    assertRefused(folder, "newer-schema", "this one knows " + Schema.NEWEST);
  }

  @Test
  void aFileThatIsNoDatabaseIsRefusedAndLeftAlone() throws IOException {
    Path file = folder.resolve("thudbook.db");
    Files.writeString(file, "a shopping list, long enough to have a header of sixteen bytes\n");
    assertRefused(folder, "not-a-database", "is not a database but a text");
    assertThat(file).hasContent("a shopping list, long enough to have a header of sixteen bytes\n");
  }

  @Test
  void aFolderThatCannotBeCreatedIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "in the way");
    assertRefused(file.resolve("data"), "folder-not-writable", "choose another one with --data");
  }

  @Test
  void aReadOnlyFolderIsRefused() {
    Path readOnly = folder.resolve("read-only");
    Database.open(readOnly).close();
    assertThat(readOnly.toFile().setWritable(false)).isTrue();
    try {
      // The superuser writes everywhere, whatever the permissions say.
      assumeTrue(!Files.isWritable(readOnly));
      assertThat(readOnly.resolve("thudbook.lock").toFile().setWritable(false)).isTrue();
      assertRefused(readOnly, "folder-not-writable", "can't be created or written to");
    } finally {
      assertThat(readOnly.toFile().setWritable(true)).isTrue();
    }
  }

  private static void assertRefused(Path folder, String code, String message) {
    assertThatThrownBy(() -> Database.open(folder).close())
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.faults().get(0).code()).isEqualTo(code);
              assertThat(refusal).hasMessageContaining(message);
              assertThat(refusal).hasMessageContaining(folder.toString());
            });
  }

  private static String pragma(Database database, String name) {
    return database.connections().read(db -> db.fetchValue("PRAGMA " + name).toString());
  }

  private void execute(String sql) throws SQLException {
    try (Connection connection = connection();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private Connection connection() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("thudbook.db"));
  }
}
