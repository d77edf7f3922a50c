package thudbook.storage.keeping;

import java.nio.file.AccessDeniedException;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.Locale;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import thudbook.quantities.Refusal;

/** Tells apart what the disk did not take from what went wrong in here. */
public final class NotStored {
  private NotStored() {}

  /** The refusal that an error means, if the disk refused; else the error itself. */
  public static RuntimeException explained(RuntimeException error) {
    for (Throwable cause = error; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException inSqlite) {
        return of(inSqlite.getResultCode(), error);
      }
    }
    return error;
  }

  /** The refusal of a file that can't be written. */
  static Refusal of(Exception error) {
    String said = String.valueOf(error.getMessage()).toLowerCase(Locale.ROOT);
    boolean closed =
        error instanceof AccessDeniedException
            || error.getCause() instanceof ReadOnlyFileSystemException
            || said.contains("read-only");
    return closed ? readOnly() : full();
  }

  private static RuntimeException of(SQLiteErrorCode code, RuntimeException error) {
    return switch (code) {
      case SQLITE_FULL, SQLITE_IOERR_WRITE, SQLITE_IOERR_FSYNC, SQLITE_IOERR_TRUNCATE -> full();
      case SQLITE_READONLY,
          SQLITE_READONLY_DBMOVED,
          SQLITE_READONLY_DIRECTORY,
          SQLITE_READONLY_CANTINIT,
          SQLITE_READONLY_CANTLOCK,
          SQLITE_READONLY_RECOVERY,
          SQLITE_READONLY_ROLLBACK,
          SQLITE_PERM ->
          readOnly();
      default -> error;
    };
  }

  private static Refusal full() {
    return Refusal.of(
        Refusal.Kind.NOT_STORED,
        "disk-full",
        "The disk that holds the data folder is full, so nothing was stored. Make room, then send"
            + " it again.");
  }

  private static Refusal readOnly() {
    return Refusal.of(
        Refusal.Kind.NOT_STORED,
        "read-only",
        "The data folder may not be written to, so nothing was stored. Let the notebook write"
            + " there, then send it again.");
  }
}
