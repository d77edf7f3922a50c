package thudbook.storage.keeping;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import thudbook.quantities.Refusal;

/**
 * Copies of a notebook in the folder {@code backups} beside its database, each a whole database of
 * its own: {@code daily-2026-11-02T09-30-00Z-schema-2.db}. One is made beside a running server as
 * well as without. A copy has its name only after it was written, synchronised and verified.
 */
public final class Backups {
  /** Why a backup was made. */
  public enum Occasion {
    /** A day has passed since the last one. */
    DAILY,
    /** The tables were about to be changed; its time is that of the newest change that it holds. */
    MIGRATION,
    /** Somebody asked for it. */
    MANUAL
  }

  /** A backup that was made. */
  public record Backup(Path file, Occasion occasion, Instant at, int schema) {}

  private static final String FOLDER = "backups";
  private static final String UNFINISHED = ".unfinished";
  private static final Duration DAY = Duration.ofDays(1);
  private static final Pattern NAME =
      Pattern.compile(
          "(daily|migration|manual)-(\\d{4}-\\d\\d-\\d\\dT)(\\d\\d)-(\\d\\d)-(\\d\\dZ)"
              + "-schema-(\\d{1,6})\\.db");

  private final Path database;
  private final Path folder;

  public Backups(Path database) {
    this.database = database;
    this.folder = database.resolveSibling(FOLDER);
  }

  /** The backups that are there, newest first. */
  public List<Backup> all() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .flatMap(file -> read(file).stream())
          .sorted(Comparator.comparing(Backup::at).reversed())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Makes a backup with its usual name.
   *
   * @param at the present time, which goes into the name in whole seconds
   * @throws Refusal if there is no notebook, it can't be read, or the disk does not take the copy
   */
  public Backup make(Occasion occasion, Instant at) {
    int schema = schema();
    Path file = folder.resolve(name(occasion, at, schema));
    copyTo(file);
    return new Backup(file, occasion, at.truncatedTo(ChronoUnit.SECONDS), schema);
  }

  /**
   * Whether the last daily backup is a day old. One with a time that is still to come does not
   * count: the clock was wrong then.
   */
  public boolean dailyDue(Instant now) {
    return all().stream()
        .filter(backup -> backup.occasion() == Occasion.DAILY)
        .noneMatch(backup -> !backup.at().isAfter(now) && backup.at().plus(DAY).compareTo(now) > 0);
  }

  /** Keeps the newest daily backups and deletes the older ones, and what a kill left unfinished. */
  public void keepDaily(int count) {
    try {
      for (Backup old :
          all().stream()
              .filter(backup -> backup.occasion() == Occasion.DAILY)
              .skip(count)
              .toList()) {
        Files.deleteIfExists(old.file());
      }
      try (Stream<Path> files = Files.list(folder)) {
        for (Path left : files.filter(Backups::isUnfinishedDaily).toList()) {
          Files.deleteIfExists(left);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Copies the notebook into a file that must not exist yet.
   *
   * @throws Refusal if there is no notebook, it can't be read, the file exists, or the disk does
   *     not take the copy
   */
  public void copyTo(Path file) {
    Path unfinished = file.resolveSibling(file.getFileName() + UNFINISHED);
    if (Files.exists(file)) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT, "file-exists", "There is a file " + file + " already.");
    }
    try {
      Files.createDirectories(DatabaseFile.folderOf(file));
      Files.deleteIfExists(unfinished);
      try (Connection connection = DatabaseFile.open(database)) {
        SchemaComparison.refuseForeign(database, connection);
        DatabaseFile.execute(connection, "VACUUM INTO ?", unfinished.toString());
      }
      DatabaseFile.synchronise(unfinished);
      DatabaseFile.refuseUnsound(unfinished);
      Files.move(unfinished, file);
      DatabaseFile.synchronise(DatabaseFile.folderOf(file));
    } catch (IOException e) {
      deleteQuietly(unfinished);
      throw NotStored.of(e);
    } catch (SQLException e) {
      deleteQuietly(unfinished);
      throw DatabaseFile.refusal(database, e);
    } catch (Refusal e) {
      deleteQuietly(unfinished);
      throw e;
    }
  }

  /** Makes the backup before the tables are changed, unless nothing was ever written. */
  void beforeMigration(int schema) throws SQLException {
    Optional<Instant> newest;
    try (Connection connection = DatabaseFile.open(database)) {
      newest =
          DatabaseFile.number(connection, "SELECT max(at) FROM change").map(Instant::ofEpochMilli);
    }
    if (newest.isPresent()) {
      Path file = folder.resolve(name(Occasion.MIGRATION, newest.get(), schema));
      // Of an attempt that failed; nothing can have been written since.
      if (!Files.exists(file)) {
        copyTo(file);
      }
    }
  }

  private int schema() {
    try (Connection connection = DatabaseFile.open(database)) {
      return Schema.versionOf(connection);
    } catch (SQLException e) {
      throw DatabaseFile.refusal(database, e);
    }
  }

  private static String name(Occasion occasion, Instant at, int schema) {
    return occasion.name().toLowerCase(Locale.ROOT)
        + "-"
        + at.truncatedTo(ChronoUnit.SECONDS).toString().replace(':', '-')
        + "-schema-"
        + schema
        + ".db";
  }

  private static Optional<Backup> read(Path file) {
    Matcher name = NAME.matcher(file.getFileName().toString());
    return name.matches()
        ? Optional.of(
            new Backup(
                file,
                Occasion.valueOf(name.group(1).toUpperCase(Locale.ROOT)),
                Instant.parse(
                    name.group(2) + name.group(3) + ":" + name.group(4) + ":" + name.group(5)),
                Integer.parseInt(name.group(6))))
        : Optional.empty();
  }

  private static boolean isUnfinishedDaily(Path file) {
    String name = file.getFileName().toString();
    return name.startsWith("daily-") && name.endsWith(UNFINISHED);
  }

  private static void deleteQuietly(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // It is named as unfinished; what went wrong first is what a person must know.
    }
  }
}
