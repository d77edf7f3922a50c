package thudbook.storage;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteException;
import thudbook.quantities.Refusal;

/** A database file that is looked at or copied, while a server has it open or not. */
final class DatabaseFile {
  private static final int BUSY_TIMEOUT_MILLISECONDS = 5_000;

  private DatabaseFile() {}

  /**
   * Opens a file for reading.
   *
   * @throws Refusal if there is none
   */
  static Connection open(Path file) throws SQLException {
    if (!Files.isRegularFile(file)) {
      throw Refusal.of(
          Refusal.Kind.NOT_FOUND, "no-notebook", "There is no notebook in the file " + file + ".");
    }
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLISECONDS);
    return config.createConnection("jdbc:sqlite:" + file);
  }

  /** Runs a statement with values. */
  static void execute(Connection connection, String sql, String... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setString(i + 1, values[i]);
      }
      statement.execute();
    }
  }

  /** The number that a query gives, if it gives one. */
  static Optional<Long> number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      if (!rows.next()) {
        return Optional.empty();
      }
      long number = rows.getLong(1);
      return rows.wasNull() ? Optional.empty() : Optional.of(number);
    }
  }

  /** What SQLite finds wrong with pages, indexes, constraints and references; empty: nothing. */
  static List<String> unsound(Connection connection) throws SQLException {
    List<String> wrong = new ArrayList<>();
    try (Statement statement = connection.createStatement()) {
      try (ResultSet rows = statement.executeQuery("PRAGMA integrity_check")) {
        while (rows.next()) {
          if (!"ok".equals(rows.getString(1))) {
            wrong.add("integrity: " + rows.getString(1));
          }
        }
      }
      try (ResultSet rows = statement.executeQuery("PRAGMA foreign_key_check")) {
        while (rows.next()) {
          wrong.add(
              "reference: row "
                  + rows.getString(2)
                  + " of "
                  + rows.getString(1)
                  + " names what is not in "
                  + rows.getString(3));
        }
      }
    }
    return wrong;
  }

  /**
   * Refuses a file in which something is wrong.
   *
   * @throws Refusal with what is wrong
   */
  static void refuseUnsound(Path file) throws SQLException {
    try (Connection connection = open(file)) {
      List<String> wrong = unsound(connection);
      if (!wrong.isEmpty()) {
        throw Refusal.of(
            Refusal.Kind.CONFLICT,
            "damaged",
            "The database " + file + " is damaged: " + wrong.get(0) + ".");
      }
    }
  }

  /** The folder in which a file is. */
  static Path folderOf(Path file) {
    Path absolute = file.toAbsolutePath();
    return Objects.requireNonNullElse(absolute.getParent(), absolute);
  }

  /** Waits until the disk has what was written to a file, or the names in a folder. */
  static void synchronise(Path path) throws IOException {
    boolean folder = Files.isDirectory(path);
    try (FileChannel channel =
        FileChannel.open(path, folder ? StandardOpenOption.READ : StandardOpenOption.WRITE)) {
      channel.force(true);
    } catch (IOException e) {
      // Not every platform opens folders; there the move is all that can be done.
      if (!folder) {
        throw e;
      }
    }
  }

  /** What an error of SQLite says to a person about this file. */
  static RuntimeException refusal(Path file, SQLException e) {
    if (e instanceof SQLiteException inSqlite) {
      switch (inSqlite.getResultCode()) {
        case SQLITE_NOTADB, SQLITE_CORRUPT -> {
          return Refusal.of(
              Refusal.Kind.CONFLICT,
              "not-a-database",
              "The file " + file + " is not a database, or is damaged.");
        }
        case SQLITE_BUSY -> {
          return Refusal.of(
              Refusal.Kind.CONFLICT,
              "busy",
              "The database " + file + " is being written to: try again in a moment.");
        }
        default -> {}
      }
    }
    IllegalStateException error = new IllegalStateException("the database " + file + " failed", e);
    return NotStored.explained(error);
  }
}
