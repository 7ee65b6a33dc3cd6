package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonText;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VerifyCommandTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withReadings(folder).console;
  }

  @Test
  void soundRecordIsToldSoWithWhatCannotBeKnownAndTheHeads() {
    assertEquals(0, console.run("verify"), console.err());
    assertTrue(console.out().startsWith("Sound: 7 row(s) in 2 chain(s)"), console.out());
    assertTrue(console.out().contains("cannot know"), console.out());
    assertEquals(0, console.run("verify", "--json"));
    assertEquals(2, json().array("heads").size());
  }

  @Test
  void alteredRowIsDamageOfTheRecord() throws SQLException {
    alter("UPDATE entry SET body = replace(body, '18.004', '18.000') WHERE kind = 'reading'");
    assertEquals(4, console.run("verify"));
    assertTrue(console.out().startsWith("Damaged: "), console.out());
    assertEquals(4, console.run("verify", "--json"));
    assertTrue(!json().truth("sound"));
    assertTrue(console.out().contains("\"trouble\": \"altered\""), console.out());
  }

  @Test
  void numberThatItsTextDoesNotComeToIsFound() throws SQLException {
    alter("UPDATE entry SET number = number + 0.001 WHERE kind = 'reading'");
    assertEquals(4, console.run("verify", "--json"));
    assertTrue(console.out().contains("\"trouble\": \"number-differs\""), console.out());
  }

  @Test
  void onlyAHeadKeptElsewhereShowsThatTheNewestRowWasCutOff() throws SQLException {
    console.run("verify", "--json");
    String head =
        json().array("heads").stream()
            .map(value -> ((JsonText) value).value())
            .filter(text -> text.contains(":5:"))
            .findFirst()
            .orElseThrow();
    assertEquals(0, console.run("verify", "--head", head), console.out());
    alter("DELETE FROM entry WHERE row_id = (SELECT max(row_id) FROM entry)");
    assertEquals(0, console.run("verify"));
    assertEquals(4, console.run("verify", "--head", head), console.out());
  }

  @Test
  void headThatIsNoneIsBadInput() {
    assertEquals(2, console.run("verify", "--head", "abc"));
    assertTrue(console.err().startsWith("--head: \"abc\" is not a head"), console.err());
  }

  /** Alters the file behind the program's back: its rules are taken out and put back again. */
  private void alter(String sql) throws SQLException {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + console.recordFile());
        Statement statement = connection.createStatement()) {
      Map<String, String> rules = new LinkedHashMap<>();
      String query = "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'";
      try (ResultSet result = statement.executeQuery(query)) {
        while (result.next()) {
          rules.put(result.getString(1), result.getString(2));
        }
      }
      for (String name : rules.keySet()) {
        statement.execute("DROP TRIGGER " + name);
      }
      assertTrue(statement.executeUpdate(sql) > 0, sql);
      for (String rule : rules.values()) {
        statement.execute(rule);
      }
    }
  }

  private JsonObject json() {
    return JsonReader.readObject(console.out(), "standard output");
  }
}
