package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.RecordDamagedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * The steps from an empty file to the present schema. A step, once released, is never changed: a
 * new version is a further file at the end of the list.
 */
final class Schema {
  /** The letters {@code DtPg} as a number: what marks a SQLite file as a record. */
  static final int APPLICATION_ID = 0x44745067;

  private static final List<String> STEPS = List.of("schema-1.sql");

  /** The version this program writes. */
  static final int VERSION = STEPS.size();

  static final Set<String> RULES =
      Set.of("entry_is_never_altered", "entry_is_never_deleted", "entry_only_extends_its_chain");

  private Schema() {}

  /** Brings the file to {@link #VERSION}; touches nothing when it is there already. */
  static void bringUpToDate(Database database) {
    if (versionOf(database) != VERSION) {
      database.write(
          "set up the tables",
          inside -> {
            // Another process may have been first while we waited for the lock.
            for (int step = (int) inside.number("PRAGMA user_version"); step < VERSION; step++) {
              inside.execute(script(STEPS.get(step)));
            }
            inside.execute("PRAGMA application_id = " + APPLICATION_ID);
            inside.execute("PRAGMA user_version = " + VERSION);
            return VERSION;
          });
    }
    database.read("set the journal mode", inside -> inside.number("PRAGMA journal_mode = WAL"));
  }

  /**
   * @throws RecordDamagedException if the file is of an older version, which reading cannot change
   */
  static int versionOf(Database database) {
    return database.read("read the version", inside -> (int) inside.number("PRAGMA user_version"));
  }

  /** The append-only rules that were taken out of the file. */
  static Set<String> missingRules(Database database) throws SQLException {
    Set<String> missing = new TreeSet<>(RULES);
    String sql = "SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'entry'";
    try (ResultSet result = database.statement(sql).executeQuery()) {
      while (result.next()) {
        missing.remove(result.getString(1));
      }
    }
    return missing;
  }

  private static String script(String name) {
    try (InputStream in = Objects.requireNonNull(Schema.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own file " + name + " does not read", e);
    }
  }
}
