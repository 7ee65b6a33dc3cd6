package datumpeg.bridge.record.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** The same columns in a table without rules or digests, with the same settings. */
final class BareTable implements AutoCloseable {
  private final Connection connection;
  private final PreparedStatement insert;

  /** What stands beside the table: nothing, or the keys and indexes the record has. */
  enum Indexes {
    NONE,
    OF_THE_RECORD,
    /** The record's own table and indexes, constraints of its columns included, without its rules. */
    OWN_WITHOUT_RULES
  }

  private static final List<String> RECORD_INDEXES =
      List.of(
          "CREATE UNIQUE INDEX chain ON entry (origin, sequence)",
          "CREATE INDEX by_job ON entry (job, organisation, kind, at)",
          "CREATE UNIQUE INDEX by_id ON entry (json_extract(body, '$.id')) WHERE kind = 'reading'");

  BareTable(Path file, Indexes indexes) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(5000);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    connection = config.createConnection("jdbc:sqlite:" + file);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = WAL");
      if (indexes == Indexes.OWN_WITHOUT_RULES) {
        ownWithoutRules(statement);
      } else {
        own(statement, indexes);
      }
    }
    insert =
        connection.prepareStatement(
            "INSERT INTO entry (organisation, job, kind, origin, sequence, at, body, previous,"
                + " digest, number) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  }

  /** The file is a record that holds nothing yet. */
  private static void ownWithoutRules(Statement statement) throws SQLException {
    statement.execute("PRAGMA cache_size = -65536"); // as the record does for many rows
    for (String rule : Schema.RULES) {
      statement.execute("DROP TRIGGER " + rule);
    }
  }

  private static void own(Statement statement, Indexes indexes) throws SQLException {
    statement.execute(
          "CREATE TABLE entry (row_id INTEGER PRIMARY KEY, organisation TEXT, job TEXT, kind TEXT,"
              + " origin TEXT, sequence INTEGER, at TEXT, body TEXT, previous TEXT, digest TEXT,"
            + " number REAL) STRICT");
    for (String index : indexes == Indexes.NONE ? List.<String>of() : RECORD_INDEXES) {
      statement.execute(index);
    }
  }

  void insert(int number, String body) throws SQLException {
    bind(number, body);
    insert.executeUpdate();
  }

  /** All in one transaction. */
  void batch(List<String> bodies) throws SQLException {
    connection.setAutoCommit(false);
    for (int i = 0; i < bodies.size(); i++) {
      bind(i, bodies.get(i));
      insert.addBatch();
    }
    insert.executeBatch();
    connection.commit();
    connection.setAutoCommit(true);
  }

  private void bind(int number, String body) throws SQLException {
    insert.setString(1, "local");
    insert.setString(2, "bench-01");
    insert.setString(3, "reading");
    insert.setString(4, "0190c5a2-7b1c-7d5e-9a31-5f0c2b7e4d10");
    insert.setLong(5, number + 2); // the first row of a chain is none of a reading
    insert.setString(6, "2026-03-02T08:15:30.000000Z");
    insert.setString(7, body);
    insert.setString(8, "0".repeat(64));
    insert.setString(9, "0".repeat(64));
    insert.setDouble(10, 6 + number / 1000.0);
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
