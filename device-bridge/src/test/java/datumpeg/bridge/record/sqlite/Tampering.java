package datumpeg.bridge.record.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** Changes a record behind the program's back, leaving the append-only rules as they were. */
final class Tampering {
  private Tampering() {}

  static void run(Path file, String... statements) throws SQLException {
    try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      List<String> rules = new ArrayList<>();
      List<String> names = new ArrayList<>();
      try (ResultSet result =
          statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
        while (result.next()) {
          names.add(result.getString(1));
          rules.add(result.getString(2));
        }
      }
      for (String name : names) {
        statement.executeUpdate("DROP TRIGGER " + name);
      }
      for (String each : statements) {
        statement.executeUpdate(each);
      }
      for (String rule : rules) {
        statement.executeUpdate(rule);
      }
    }
  }
}
