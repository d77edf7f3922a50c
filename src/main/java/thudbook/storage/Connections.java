package thudbook.storage;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import thudbook.library.Catalogue;
import thudbook.storage.keeping.DatabaseFile;
import thudbook.storage.keeping.NotStored;
import thudbook.storage.keeping.Schema;
import thudbook.storage.keeping.SchemaComparison;

/**
 * The connections to one database file: one that writes and a few that only read.
 *
 * <p>A write takes SQLite's write lock at its beginning. A transaction that begins by reading and
 * writes later would fail at once when another write came between, whatever the time it may wait.
 */
final class Connections implements AutoCloseable {
  private static final int READERS = 4;

  /** A write waits so long for another process that has the write lock, such as a backup. */
  private static final int BUSY_TIMEOUT_MILLISECONDS = 5_000;

  /** The write-ahead log is cut back to this size after a checkpoint. */
  private static final int JOURNAL_SIZE_LIMIT_BYTES = 8 << 20;

  private final Connection writer;
  private final DSLContext writing;
  private final ReentrantLock oneWriter = new ReentrantLock(true);
  private final HikariDataSource readers;
  private final DSLContext reading;
  private final CatalogueUpdates catalogue;

  private Connections(Connection writer, HikariDataSource readers, CatalogueUpdates catalogue) {
    Settings settings = new Settings().withRenderSchema(false).withExecuteLogging(false);
    this.writer = writer;
    this.writing = DSL.using(writer, SQLDialect.SQLITE, settings);
    this.readers = readers;
    this.catalogue = catalogue;
    this.reading = DSL.using(readers, SQLDialect.SQLITE, settings);
  }

  /** Opens a file, creates it if it is missing and brings its tables up to date. */
  static Connections open(Path file) throws SQLException {
    quiet();
    if (DatabaseFile.hasContent(file)) {
      Schema.refuseUnusable(file);
    }
    SQLiteDataSource source = writingSource(file);
    Schema.bringUpToDate(file, source, FactRows::fill);
    Connection writer = source.getConnection();
    try {
      return new Connections(writer, readers(file), CatalogueUpdates.following(writer));
    } catch (SQLException | RuntimeException e) {
      writer.close();
      throw e;
    }
  }

  /**
   * Opens a file beside the process that has it, for reading.
   *
   * @throws thudbook.quantities.Refusal if there is none, or its tables are not of this version
   */
  static Connections openForReading(Path file) throws SQLException {
    quiet();
    Connection reader = DatabaseFile.open(file);
    try {
      SchemaComparison.refuseForeign(file, reader);
      Schema.refuseOther(file, Schema.versionOf(reader));
      List<String> missing = SchemaComparison.missing(reader);
      if (!missing.isEmpty()) {
        throw Schema.damaged(file, missing);
      }
      return new Connections(reader, readers(file), CatalogueUpdates.none(reader));
    } catch (SQLException | RuntimeException e) {
      reader.close();
      throw e;
    }
  }

  /** What reads, for tests that count statements. */
  DSLContext reading() {
    return reading;
  }

  /** Reads in one transaction, so that all of it sees one state. */
  <T> T read(Function<DSLContext, T> work) {
    return reading.transactionResult(transaction -> work.apply(transaction.dsl()));
  }

  /**
   * Reads and writes in one transaction; nothing is kept if it throws.
   *
   * @throws thudbook.quantities.Refusal if the disk is full or may not be written to
   */
  <T> T write(Function<DSLContext, T> work) {
    oneWriter.lock();
    try {
      T result = writing.transactionResult(transaction -> work.apply(transaction.dsl()));
      catalogue.follow();
      return result;
    } catch (DataAccessException e) {
      throw NotStored.explained(e);
    } finally {
      oneWriter.unlock();
    }
  }

  /** The recipes in memory, in step with every commit. */
  Catalogue catalogue() {
    return catalogue.catalogue();
  }

  @Override
  public void close() {
    readers.close();
    oneWriter.lock();
    try (Connection closing = writer;
        Statement statement = closing.createStatement()) {
      if (closing.isReadOnly()) {
        return;
      }
      statement.execute("PRAGMA optimize");
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (SQLException e) {
      RuntimeException error = new IllegalStateException("the database can't be closed", e);
      // A disk that takes nothing loses nothing here: the next start reads the log.
      if (NotStored.explained(error) == error) {
        throw error;
      }
    } finally {
      oneWriter.unlock();
    }
  }

  private static void quiet() {
    System.setProperty("org.jooq.no-logo", "true");
    System.setProperty("org.jooq.no-tips", "true");
  }

  private static SQLiteDataSource writingSource(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setJournalSizeLimit(JOURNAL_SIZE_LIMIT_BYTES);
    return source(file, config);
  }

  private static HikariDataSource readers(Path file) {
    HikariConfig pool = new HikariConfig();
    pool.setPoolName("readers");
    pool.setDataSource(source(file, new SQLiteConfig()));
    pool.setConnectionInitSql("PRAGMA query_only = ON");
    pool.setMaximumPoolSize(READERS);
    pool.setMinimumIdle(1);
    pool.setMaxLifetime(0);
    return new HikariDataSource(pool);
  }

  private static SQLiteDataSource source(Path file, SQLiteConfig config) {
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLISECONDS);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
  }
}
