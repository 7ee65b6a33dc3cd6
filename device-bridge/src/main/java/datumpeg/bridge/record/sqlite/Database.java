package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.RecordUnavailableException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
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
  private final Opening first;
  private final Opening again;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();

  /** Null while the file is let go of. */
  private @Nullable Connection connection;

  private FileIdentity identity = new FileIdentity(Optional.empty());
  private int openingCount;

  /** Connections to files that another one has taken the place of; never closed. */
  private final List<Connection> abandoned = new ArrayList<>();

  /** How a connection is made. */
  @FunctionalInterface
  private interface Opening {
    Connection open() throws SQLException;
  }

  private Database(Path file, SqliteSettings settings, Opening opening) {
    this(file, settings, opening, opening);
  }

  private Database(Path file, SqliteSettings settings, Opening first, Opening again) {
    this.file = file;
    this.failures = new SqlFailures(file, settings.lockWait());
    this.first = first;
    this.again = again;
    SqliteNatives.prepare();
    open();
  }

  static Database open(Path file, SqliteRecords.Mode mode, SqliteSettings settings) {
    return open(file, mode, settings, ReadingWay.SHARED);
  }

  static Database open(
      Path file, SqliteRecords.Mode mode, SqliteSettings settings, ReadingWay way) {
    return new Database(file, settings, opening(file, mode, settings, way));
  }

  /** Open to be read alone; from when it is opened again on, to be written. */
  static Database readUntilReopened(Path file, SqliteSettings settings) {
    return new Database(
        file,
        settings,
        opening(file, SqliteRecords.Mode.READ, settings, ReadingWay.ALONE),
        opening(file, SqliteRecords.Mode.WRITE, settings, ReadingWay.SHARED));
  }

  private static Opening opening(
      Path file, SqliteRecords.Mode mode, SqliteSettings settings, ReadingWay way) {
    return () -> {
      Connection connection = config(mode, settings).createConnection(url(file) + way.options());
      try {
        configure(connection, mode, settings, way);
        return connection;
      } catch (SQLException e) {
        closed(connection);
        throw e;
      }
    };
  }

  private void open() {
    try {
      connection = (openingCount == 0 ? first : again).open();
      identity = FileIdentity.of(file);
      openingCount++;
    } catch (SQLException e) {
      throw failures.translate("open what is stored", e);
    }
  }

  private static void closed(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      // Its disk failed, which is being dealt with.
    }
  }

  /** Closes the file; whatever is asked then fails until {@link #reopen}. */
  synchronized void letGo() {
    forgetStatements();
    if (connection != null && identity.isReplacedAt(file)) {
      abandoned.add(connection);
    } else if (connection != null) {
      closed(connection);
    }
    connection = null;
  }

  /** Closes the file and opens the one that is in its place now. */
  synchronized void reopen() {
    letGo();
    open();
  }

  /** Grows each time the file is opened. */
  synchronized int openingCount() {
    return openingCount;
  }

  private Connection connection() {
    if (connection == null) {
      throw new RecordUnavailableException(
          RecordUnavailableException.Reason.NOT_REACHABLE,
          file,
          "The record " + file + " is closed until its disk is there again.",
          null);
    }
    return connection;
  }

  /** A database of this process alone, gone when it is closed. */
  static Database inMemory() {
    SqliteSettings settings = SqliteSettings.usual();
    return new Database(
        Path.of("in memory"),
        settings,
        () -> config(SqliteRecords.Mode.WRITE, settings).createConnection("jdbc:sqlite::memory:"));
  }

  private static SQLiteConfig config(SqliteRecords.Mode mode, SqliteSettings settings) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(Math.toIntExact(settings.lockWait().toMillis()));
    // Else the driver asks for the last row's number after each insert, which nobody wants to know.
    config.setGetGeneratedKeys(false);
    if (mode == SqliteRecords.Mode.WRITE) {
      config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
      config.enforceForeignKeys(true);
    } else {
      // Not opened as read-only: only a connection that may write tidies up after a crash. Nor told
      // anything that makes SQLite look into the file before it is told how to.
      config.resetOpenMode(SQLiteOpenMode.CREATE);
    }
    return config;
  }

  private static String url(Path file) {
    // As a URI, so that a question mark in a name is not taken for the start of options.
    return "jdbc:sqlite:" + file.toUri();
  }

  private static void configure(
      Connection connection, SqliteRecords.Mode mode, SqliteSettings settings, ReadingWay way)
      throws SQLException {
    try (Statement statement = connection.createStatement()) {
      if (!way.pragma().isEmpty()) {
        statement.executeUpdate(way.pragma());
      }
      for (String pragma : settings.pragmas()) {
        statement.executeUpdate("PRAGMA " + pragma);
      }
      if (mode != SqliteRecords.Mode.WRITE) {
        statement.executeUpdate("PRAGMA query_only = ON");
      }
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
      known = connection().prepareStatement(sql);
      prepared.put(sql, known);
    }
    return known;
  }

  /** Runs one statement or several. */
  void execute(String sql) throws SQLException {
    try (Statement statement = connection().createStatement()) {
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
      if (connection != null && !identity.isReplacedAt(file)) {
        connection.close();
        connection = null;
      }
    } catch (SQLException e) {
      throw failures.translate("close what is stored", e);
    }
  }
}
