package thudbook.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import thudbook.quantities.Refusal;

/** The tables of a database file, and the migrations that bring them up to date. */
final class Schema {
  /** The number of the newest file in {@code migrations}. */
  static final int NEWEST = 4;

  private static final String HISTORY = "flyway_schema_history";

  private Schema() {}

  /**
   * Runs the migrations that are missing, after a backup of what there is. The migration library is
   * left alone when none is: it takes longer to start than everything else here.
   *
   * @throws Refusal if a newer version of the program has migrated the file
   */
  static void bringUpToDate(Path file, DataSource source) throws SQLException {
    int found = versionOf(source);
    refuseNewer(file, found);
    if (found > 0 && found < NEWEST) {
      new Backups(file).beforeMigration(found);
    }
    if (found < NEWEST) {
      migrate(source);
    } else {
      // An earlier start may have been killed between the migration and this.
      FactRows.fill(source);
    }
  }

  /** Runs the migrations that are missing, and makes what they can't make of documents. */
  static void migrate(DataSource source) {
    Flyway.configure()
        .dataSource(source)
        .locations("classpath:migrations")
        .table(HISTORY)
        .failOnMissingLocations(true)
        .validateMigrationNaming(true)
        .cleanDisabled(true)
        .load()
        .migrate();
    FactRows.fill(source);
  }

  /** Refuses tables that this version does not know. */
  static void refuseNewer(Path file, int found) {
    if (found > NEWEST) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "newer-schema",
          "The database "
              + file
              + " was written by a newer Thudbook (its tables have version "
              + found
              + ", this one knows "
              + NEWEST
              + "): start the newer one, or choose another folder with --data.");
    }
  }

  /** Refuses tables of any other version. */
  static void refuseOther(Path file, int found) {
    refuseNewer(file, found);
    if (found < NEWEST) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "older-schema",
          "The tables of "
              + file
              + " are of an earlier version ("
              + found
              + "): serve the notebook once, which brings them up to date.");
    }
  }

  private static int versionOf(DataSource source) throws SQLException {
    try (Connection connection = source.getConnection()) {
      return versionOf(connection);
    }
  }

  /** The newest migration that was run on a database, 0 if none was. */
  static int versionOf(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      try (ResultSet table =
          statement.executeQuery("SELECT 1 FROM sqlite_schema WHERE name = '" + HISTORY + "'")) {
        if (!table.next()) {
          return 0;
        }
      }
      try (ResultSet newest =
          statement.executeQuery(
              "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM "
                  + HISTORY
                  + " WHERE success")) {
        return newest.next() ? newest.getInt(1) : 0;
      }
    }
  }
}
