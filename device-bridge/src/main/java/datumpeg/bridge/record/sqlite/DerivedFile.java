package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.record.RecordDamagedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Objects;

/**
 * What follows from a record, in a SQLite file of its own beside it: so the record is not written
 * to by who only reads it, and the file may be thrown away. Where it cannot be kept there, it is
 * kept in memory.
 */
public final class DerivedFile {
  /** The letters {@code DtPd} as a number. */
  private static final int APPLICATION_ID = 0x44745064;

  /** Of the tables; another one is not read but made anew. */
  private static final int VERSION = 2;

  private static final SqliteSettings SETTINGS =
      SqliteSettings.usual()
          .withLockWait(Duration.ofMillis(500))
          .withPragmas(List.of("journal_mode = WAL", "synchronous = NORMAL"));

  private DerivedFile() {}

  /** Where the outcomes of a record are kept. */
  public static Path beside(Path record) {
    return record.resolveSibling(record.getFileName() + ".outcomes");
  }

  /**
   * Opens what is kept, or begins with nothing.
   *
   * @param basis names what else outcomes follow from, such as the version of the analysis; what
   *     was worked out on another basis is thrown away
   */
  public static DerivedStore open(Path file, String basis) {
    try {
      return onDisk(file, basis);
    } catch (FailureException e) {
      return inMemory(basis);
    }
  }

  /** Keeps nothing beyond this process. */
  public static DerivedStore inMemory(String basis) {
    return ready(Database.inMemory(), basis);
  }

  private static DerivedStore onDisk(Path file, String basis) {
    try {
      return ready(Database.open(file, SqliteRecords.Mode.WRITE, SETTINGS), basis);
    } catch (RecordDamagedException e) {
      if (!discard(file)) {
        throw e;
      }
      return ready(Database.open(file, SqliteRecords.Mode.WRITE, SETTINGS), basis);
    }
  }

  /** A file that cannot be read is thrown away, unless it is not one of ours. */
  private static boolean discard(Path file) {
    try {
      if (Files.size(file) < 100 || !isOurs(file)) {
        return false;
      }
      for (String end : List.of("", "-wal", "-shm")) {
        Files.deleteIfExists(file.resolveSibling(file.getFileName() + end));
      }
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isOurs(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] header = in.readNBytes(72);
      return ByteBuffer.wrap(header).getInt(68) == APPLICATION_ID;
    }
  }

  private static DerivedStore ready(Database database, String basis) {
    try {
      database.write("prepare what is kept", inside -> prepare(inside, basis));
      return new DerivedTables(database);
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static long prepare(Database inside, String basis) throws SQLException {
    long id = inside.number("PRAGMA application_id");
    if (id != APPLICATION_ID && inside.number("SELECT count(*) FROM sqlite_schema") > 0) {
      throw new SQLException("the file is a database of another program");
    }
    if (inside.number("PRAGMA user_version") != VERSION) {
      for (String table : List.of("basis", "job", "stage", "outcome")) {
        inside.execute("DROP TABLE IF EXISTS " + table);
      }
      inside.execute(script());
      inside.execute("PRAGMA application_id = " + APPLICATION_ID);
      inside.execute("PRAGMA user_version = " + VERSION);
    }
    PreparedStatement same = inside.statement("SELECT count(*) FROM basis WHERE basis = ?");
    same.setString(1, basis);
    boolean known;
    try (ResultSet result = same.executeQuery()) {
      known = result.next() && result.getLong(1) == 1;
    }
    if (!known) {
      begin(inside, basis);
    }
    return VERSION;
  }

  private static void begin(Database inside, String basis) throws SQLException {
    for (String table : List.of("basis", "job", "stage", "outcome")) {
      inside.statement("DELETE FROM " + table).executeUpdate();
    }
    PreparedStatement insert = inside.statement("INSERT INTO basis VALUES (1, ?, 0, '')");
    insert.setString(1, basis);
    insert.executeUpdate();
  }

  private static String script() {
    String name = "derived.sql";
    try (InputStream in =
        Objects.requireNonNull(DerivedFile.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own file " + name + " does not read", e);
    }
  }
}
