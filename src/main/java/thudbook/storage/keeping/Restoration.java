package thudbook.storage.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flywaydb.core.api.FlywayException;
import org.jooq.exception.DataAccessException;
import org.sqlite.SQLiteDataSource;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * Puts a backup in the place of a notebook. The copy is brought up to date and verified beside it
 * first; only then, in one rename, does it take its place.
 */
public final class Restoration {
  private static final String LOG = "-wal";
  private static final String SHARED = "-shm";

  private final Path database;
  private final Schema.Filling filling;
  private final Function<Path, List<String>> verifying;

  /**
   * @param owned says that this process has the folder
   * @param filling makes what migrations can't make of documents
   * @param verifying tells what is wrong with a notebook, a sentence each
   */
  public Restoration(
      Path database,
      FolderLock owned,
      Schema.Filling filling,
      Function<Path, List<String>> verifying) {
    if (!owned.isHeld()) {
      throw new IllegalStateException("the folder is not ours");
    }
    this.database = database;
    this.filling = filling;
    this.verifying = verifying;
  }

  /** Restores, and returns where the former notebook is, if there was one. */
  public Optional<Path> restore(Path backup, Instant at) {
    Path copy = database.resolveSibling("thudbook-restoring.db");
    try {
      if (!Files.isRegularFile(backup)) {
        throw Refusal.of(Refusal.Kind.NOT_FOUND, "no-file", "There is no file " + backup + ".");
      }
      DatabaseFile.refuseOtherContent(backup);
      deleteWithLog(copy);
      Files.copy(backup, copy);
      prepare(backup, copy);
      Optional<Path> kept = keepFormer(at);
      Files.move(copy, database, StandardCopyOption.ATOMIC_MOVE);
      DatabaseFile.synchronise(DatabaseFile.folderOf(database));
      return kept;
    } catch (IOException e) {
      throw NotStored.of(e);
    } catch (SQLException e) {
      throw DatabaseFile.refusal(backup, e);
    } catch (FlywayException | DataAccessException | IllegalStateException e) {
      throw DatabaseFile.explained(backup, e);
    } finally {
      deleteWithLog(copy);
    }
  }

  /** Verifies a copy, brings its tables up to date and leaves it as one file. */
  private void prepare(Path backup, Path copy) throws SQLException, IOException {
    try (Connection connection = DatabaseFile.open(copy)) {
      SchemaComparison.refuseForeign(backup, connection);
      Schema.refuseNewer(backup, Schema.versionOf(connection));
      List<String> wrong = new ArrayList<>(SchemaComparison.differences(connection));
      wrong.addAll(DatabaseFile.unsound(connection));
      if (!wrong.isEmpty()) {
        throw Schema.damaged(backup, wrong.subList(0, 1));
      }
    }
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + copy);
    Schema.migrate(source, filling);
    List<String> wrong = verifying.apply(copy);
    if (!wrong.isEmpty()) {
      throw new Refusal(
          Refusal.Kind.CONFLICT,
          wrong.stream().map(what -> new Fault("", 0, "damaged", "", "", what)).toList());
    }
    emptyLog(copy);
    DatabaseFile.synchronise(copy);
  }

  private Optional<Path> keepFormer(Instant at) throws IOException {
    if (!Files.exists(database)) {
      return Optional.empty();
    }
    Path kept =
        database.resolveSibling(
            "thudbook-replaced-"
                + at.truncatedTo(ChronoUnit.SECONDS).toString().replace(':', '-')
                + ".db");
    try {
      emptyLog(database);
    } catch (SQLException e) {
      // A damaged one is a reason to restore: it is kept as it is, with its log.
    }
    Files.copy(database, kept);
    DatabaseFile.synchronise(kept);
    // A log that stays behind would be played into the database that comes now.
    moveIfThere(LOG, kept);
    moveIfThere(SHARED, kept);
    return Optional.of(kept);
  }

  private void moveIfThere(String ending, Path kept) throws IOException {
    Path file = Path.of(database + ending);
    if (Files.exists(file)) {
      Files.move(file, Path.of(kept + ending));
    }
  }

  /** Writes what stands in the write-ahead log into the database itself. */
  private static void emptyLog(Path file) throws SQLException {
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file);
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  private static void deleteWithLog(Path file) {
    for (String ending : List.of("", LOG, SHARED)) {
      try {
        Files.deleteIfExists(Path.of(file + ending));
      } catch (IOException e) {
        // It is in nobody's way under its name, and the next restore deletes it.
      }
    }
  }
}
