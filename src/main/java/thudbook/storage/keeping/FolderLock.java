package thudbook.storage.keeping;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteException;
import thudbook.quantities.Refusal;

/**
 * Ownership of a data folder. The operating system gives the lock back when its process ends,
 * however it ends, so that a file left behind by a crash locks nobody out.
 */
public final class FolderLock implements AutoCloseable {
  private static final String FILE = "thudbook.lock";

  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Takes the folder.
   *
   * @throws Refusal if it can't be written to, or another process or this one has it
   */
  public static FolderLock take(Path folder) {
    FileChannel channel;
    try {
      channel =
          FileChannel.open(
              folder.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw unwritable(folder);
    }
    FolderLock lock = new FolderLock(channel);
    if (tryLock(channel) == null) {
      lock.close();
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "folder-in-use",
          "The data folder "
              + folder
              + " is in use by a Thudbook that is running: stop that one first, or choose another"
              + " folder with --data.");
    }
    return lock;
  }

  private static @Nullable FileLock tryLock(FileChannel channel) {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null; // this very process has it
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  boolean isHeld() {
    return channel.isOpen();
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What keeps a folder from being a data folder. */
  public static Refusal unwritable(Path folder) {
    return Refusal.of(
        Refusal.Kind.CONFLICT,
        "folder-not-writable",
        "The data folder "
            + folder
            + " can't be created or written to: choose another one with --data.");
  }

  /** What an error of SQLite says to a person who opens a data folder with this database. */
  public static RuntimeException refusal(Path folder, Path file, SQLException e) {
    if (e instanceof SQLiteException inSqlite) {
      switch (inSqlite.getResultCode()) {
        case SQLITE_NOTADB, SQLITE_CORRUPT -> {
          return Refusal.of(
              Refusal.Kind.CONFLICT,
              "not-a-database",
              "The file "
                  + file
                  + " is not a database, or is damaged: restore a backup, or choose another folder"
                  + " with --data.");
        }
        case SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_READONLY_DIRECTORY, SQLITE_PERM -> {
          return unwritable(folder);
        }
        default -> {}
      }
    }
    return new IllegalStateException("the database of " + folder + " can't be opened", e);
  }
}
