package thudbook.storage.keeping;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import thudbook.quantities.Refusal;

/** The tables of a database file, and the migrations that bring them up to date. */
public final class Schema {
  /** The number of the newest file in {@code migrations}. */
  public static final int NEWEST = 5;

  /** The table in which the migrations are that were run. */
  static final String HISTORY = "flyway_schema_history";

  private Schema() {}

  /** Makes what migrations can't make of documents. */
  @FunctionalInterface
  public interface Filling {
    /** Makes what is missing; nothing, where nothing is. */
    void fill(DataSource source);
  }

  /**
   * Runs the migrations that are missing, after a backup of what there is. The migration library is
   * left alone when none is: it takes longer to start than everything else here.
   *
   * @throws Refusal if the backup can't be made
   */
  public static void bringUpToDate(Path file, DataSource source, Filling filling)
      throws SQLException {
    int found = versionOf(source);
    if (found > 0 && found < NEWEST) {
      new Backups(file).beforeMigration(found);
    }
    if (found < NEWEST) {
      migrate(source, filling);
    } else {
      // An earlier start may have been killed between the migration and this.
      filling.fill(source);
    }
  }

  /** Runs the migrations that are missing, and makes what they can't make of documents. */
  static void migrate(DataSource source, Filling filling) {
    Flyway.configure()
        .dataSource(source)
        .locations("classpath:migrations")
        .table(HISTORY)
        .failOnMissingLocations(true)
        .validateMigrationNaming(true)
        .cleanDisabled(true)
        .load()
        .migrate();
    filling.fill(source);
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
  public static void refuseOther(Path file, int found) {
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
  public static int versionOf(Connection connection) throws SQLException {
    if (!hasHistory(connection)) {
      return 0;
    }
    try (Statement statement = connection.createStatement();
        ResultSet newest =
            statement.executeQuery(
                "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM "
                    + HISTORY
                    + " WHERE success")) {
      return newest.next() ? newest.getInt(1) : 0;
    }
  }

  /**
   * Whether a database knows which migrations were run on it. One of another program that has a
   * table of that name, but not what we ask it, does not.
   */
  static boolean hasHistory(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet columns =
            statement.executeQuery(
                "SELECT count(*) FROM pragma_table_info('"
                    + HISTORY
                    + "') WHERE name IN ('version', 'script', 'success')")) {
      return columns.next() && columns.getInt(1) == 3;
    }
  }

  /**
   * Refuses a file that is there and is no notebook which this version can open or migrate. It is
   * only read.
   */
  public static void refuseUnusable(Path file) throws SQLException {
    try (Connection connection = DatabaseFile.open(file)) {
      SchemaComparison.refuseForeign(file, connection);
      refuseNewer(file, versionOf(connection));
      List<String> missing = SchemaComparison.missing(connection);
      if (!missing.isEmpty()) {
        throw damaged(file, missing);
      }
    }
  }

  /** What a database is refused with whose schema is not what it has to be. */
  public static Refusal damaged(Path file, List<String> differences) {
    return Refusal.of(
        Refusal.Kind.CONFLICT,
        "damaged",
        "The database " + file + " is damaged: " + String.join(", ", differences) + ".");
  }
}
