package datumpeg.bridge.record.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/**
 * One connection to a record's file: prepared statements, transactions, failures in words.
 * Thread-safe: one call at a time.
 */
final class Database implements AutoCloseable {

  /** What is done with the connection. */
  @FunctionalInterface
  interface Work<T> {
    T run(Database database) throws SQLException;
  }

  private final Path file;
  private final SqlFailures failures;
  private final Connection connection;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();

  private Database(Path file, SqlFailures failures, Connection connection) {
    this.file = file;
    this.failures = failures;
    this.connection = connection;
  }

  static Database open(Path file, SqliteRecords.Mode mode, SqliteSettings settings) {
    SqlFailures failures = new SqlFailures(file, settings.lockWait());
    SqliteNatives.prepare();
    try {
      Database database =
          new Database(file, failures, config(mode, settings).createConnection(url(file)));
      database.configure(mode, settings);
      return database;
    } catch (SQLException e) {
      throw failures.translate("open what is stored", e);
    }
  }

  /** A database of this process alone, gone when it is closed. */
  static Database inMemory() {
    Path nowhere = Path.of("in memory");
    SqliteSettings settings = SqliteSettings.usual();
    SqliteNatives.prepare();
    SqlFailures failures = new SqlFailures(nowhere, settings.lockWait());
    try {
      return new Database(
          nowhere,
          failures,
          config(SqliteRecords.Mode.WRITE, settings).createConnection("jdbc:sqlite::memory:"));
    } catch (SQLException e) {
      throw failures.translate("open what is stored", e);
    }
  }

  private static SQLiteConfig config(SqliteRecords.Mode mode, SqliteSettings settings) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(Math.toIntExact(settings.lockWait().toMillis()));
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    // Else the driver asks for the last row's number after each insert, which nobody wants to know.
    config.setGetGeneratedKeys(false);
    if (mode == SqliteRecords.Mode.READ) {
      // Not opened as read-only: only a connection that may write tidies up after a crash.
      config.resetOpenMode(SQLiteOpenMode.CREATE);
    }
    return config;
  }

  private static String url(Path file) {
    // As a URI, so that a question mark in a name is not taken for the start of options.
    return "jdbc:sqlite:" + file.toUri();
  }

  private void configure(SqliteRecords.Mode mode, SqliteSettings settings) throws SQLException {
    try {
      for (String pragma : settings.pragmas()) {
        execute("PRAGMA " + pragma);
      }
      if (mode == SqliteRecords.Mode.READ) {
        execute("PRAGMA query_only = ON");
      }
    } catch (SQLException e) {
      close();
      throw e;
    }
  }

  Path file() {
    return file;
  }

  /** Runs work that only reads. */
  synchronized <T> T read(String attempt, Work<T> work) {
    try {
      return work.run(this);
    } catch (SQLException e) {
      forgetStatements();
      throw failures.translate(attempt, e);
    }
  }

  /** Runs work in one transaction that holds the write lock from its start. */
  synchronized <T> T write(String attempt, Work<T> work) {
    try {
      statement("BEGIN IMMEDIATE").execute();
      T result = work.run(this);
      statement("COMMIT").execute();
      return result;
    } catch (SQLException e) {
      rollback();
      throw failures.translate(attempt, e);
    } catch (RuntimeException | Error e) {
      rollback();
      throw e;
    }
  }

  /**
   * The same for thousands of rows. Beyond its cache of 2 MB SQLite would copy the pages each row
   * changes to a file, so as to undo one row alone; with room for 64 MB it need not.
   */
  synchronized <T> T writeMany(String attempt, Work<T> work) {
    try {
      execute("PRAGMA cache_size = -65536");
      return write(attempt, work);
    } catch (SQLException e) {
      throw failures.translate(attempt, e);
    } finally {
      usualCache();
    }
  }

  private void usualCache() {
    try {
      execute("PRAGMA cache_size = -2000");
    } catch (SQLException e) {
      // More memory stays in use than need be; nothing else depends on it.
    }
  }

  /**
   * Runs work that writes by exactly one statement: SQLite takes the write lock for it, and commits
   * it by itself or not at all.
   */
  synchronized <T> T writeOne(String attempt, Work<T> work) {
    return read(attempt, work);
  }

  private void rollback() {
    forgetStatements();
    try {
      execute("ROLLBACK");
    } catch (SQLException e) {
      // SQLite has rolled back by itself, or the transaction never began: either way it is over.
    }
  }

  /** The driver closes a statement that failed, and does not say so. */
  private void forgetStatements() {
    for (PreparedStatement statement : prepared.values()) {
      try {
        statement.close();
      } catch (SQLException e) {
        // It answers once more with what it failed on, which is being dealt with.
      }
    }
    prepared.clear();
  }

  /** A statement that is kept for the next time; the caller closes its result, not itself. */
  PreparedStatement statement(String sql) throws SQLException {
    PreparedStatement known = prepared.get(sql);
    if (known == null) {
      known = connection.prepareStatement(sql);
      prepared.put(sql, known);
    }
    return known;
  }

  /** Runs one statement or several. */
  void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  long number(String sql) throws SQLException {
    try (ResultSet result = statement(sql).executeQuery()) {
      return result.next() ? result.getLong(1) : 0;
    }
  }

  @Override
  public synchronized void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw failures.translate("close what is stored", e);
    }
  }
}
