package thudbook.storage.keeping;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
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
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import thudbook.quantities.Refusal;

/** A database file that is looked at or copied, while a server has it open or not. */
public final class DatabaseFile {
  /** With these characters and a zero the file begins (Database File Format, sqlite.org, 1.3). */
  private static final String MAGIC = "SQLite format 3\0";

  /** So many bytes tell a text from anything else. */
  private static final int LOOKED_AT = 512;

  private static final int BUSY_TIMEOUT_MILLISECONDS = 5_000;

  private DatabaseFile() {}

  /**
   * Opens a file for reading.
   *
   * @throws Refusal if there is none, or it is no database
   */
  public static Connection open(Path file) throws SQLException {
    if (!Files.isRegularFile(file)) {
      throw Refusal.of(
          Refusal.Kind.NOT_FOUND, "no-notebook", "There is no notebook in the file " + file + ".");
    }
    refuseOtherContent(file);
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLISECONDS);
    return config.createConnection("jdbc:sqlite:" + file);
  }

  /** Whether there is a file that is not empty. */
  public static boolean hasContent(Path file) {
    try {
      return Files.isRegularFile(file) && Files.size(file) > 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Refuses what does not begin as every database of SQLite does. SQLite itself takes an empty file
   * for a database without tables.
   *
   * @throws Refusal with what the file is instead
   */
  static void refuseOtherContent(Path file) {
    byte[] first;
    try (InputStream content = Files.newInputStream(file)) {
      first = content.readNBytes(LOOKED_AT);
    } catch (IOException e) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "unreadable", "The file " + file + " can't be read.");
    }
    if (!new String(first, StandardCharsets.ISO_8859_1).startsWith(MAGIC)) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "not-a-database",
          "The file " + file + " is not a database" + instead(first) + ".");
    }
  }

  private static String instead(byte[] first) {
    if (first.length == 0) {
      return ": it is empty";
    }
    if (first.length > 1 && first[0] == 'P' && first[1] == 'K') {
      return " but a zip file; documents are taken in by the page that imports";
    }
    for (byte each : first) {
      // No text has control characters other than tabs and ends of lines.
      if (each >= 0 && each < ' ' && each != '\t' && each != '\n' && each != '\r') {
        return ", or its first bytes are damaged";
      }
    }
    return " but a text";
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
  public static Optional<Long> number(Connection connection, String sql) throws SQLException {
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
  public static List<String> unsound(Connection connection) throws SQLException {
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

  /** What an error says to a person about this file, if SQLite is behind it; else the error. */
  public static RuntimeException explained(Path file, RuntimeException error) {
    for (Throwable cause = error; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException inSqlite) {
        return refusal(file, inSqlite);
      }
    }
    return error;
  }

  /** What an error of SQLite says to a person about this file. */
  public static RuntimeException refusal(Path file, SQLException e) {
    RuntimeException error =
        NotStored.explained(new IllegalStateException("the database " + file + " failed", e));
    if (error instanceof Refusal || !(e instanceof SQLiteException inSqlite)) {
      return error;
    }
    // The low byte of a code is its kind; SQLITE_CORRUPT_VTAB and others are of the first.
    return switch (SQLiteErrorCode.getErrorCode(inSqlite.getResultCode().code & 0xff)) {
      case SQLITE_NOTADB, SQLITE_CORRUPT ->
          conflict("not-a-database", "The file " + file + " is not a database, or is damaged.");
      case SQLITE_IOERR ->
          conflict("unreadable", "The database " + file + " can't be read to its end.");
      case SQLITE_CANTOPEN ->
          conflict(
              "unreadable",
              "The database " + file + " can't be opened: it or its folder may not be read.");
      case SQLITE_BUSY ->
          conflict("busy", "The database " + file + " is being written to: try again in a moment.");
      default -> error;
    };
  }

  private static Refusal conflict(String code, String message) {
    return Refusal.of(Refusal.Kind.CONFLICT, code, message);
  }
}
