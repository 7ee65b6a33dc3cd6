package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LimitsCommandTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() {
    console = new TestConsole(folder);
  }

  @Test
  void everyRowIsListedWithTheWarningThatNobodyComparedIt() {
    assertEquals(0, console.run("limits", "list"), console.err());
    assertTrue(console.out().lines().count() > 10);
    assertTrue(
        console
            .out()
            .lines()
            .skip(1)
            .allMatch(line -> line.contains(", verify against your copy  ")),
        console.out());
  }

  @Test
  void rowIsShownWithWhatItPermitsAtASize() {
    assertEquals(0, console.run("limits", "show", "as4100-plumb", "--size", "4.2 m"));
    assertTrue(console.out().contains("size / 500, at most 25 mm"), console.out());
    assertTrue(console.out().contains("at 4200 mm  -8.4 mm to +8.4 mm"), console.out());
  }

  @Test
  void jsonSaysThatTheRowWasNotSeen() {
    console.run("limits", "show", "en1090-column-spacing-1", "--size", "6 m", "--json");
    JsonObject row = JsonReader.readObject(console.out(), "standard output");
    assertTrue(!row.truth("seen"));
    assertTrue(console.out().startsWith("{\n  \"format\": 1,"), console.out());
    assertTrue(console.out().contains("\"upper\": 10.2"), console.out());
    assertTrue(console.out().contains("\"confidence\": \"memory-medium\""), console.out());
    assertEquals(0, console.run("limits", "list", "--json"));
    assertTrue(JsonReader.readObject(console.out(), "standard output").array("limits").size() > 10);
  }

  @Test
  void unknownRowAndBadSizeAreBadInput() {
    assertEquals(2, console.run("limits", "show", "as4100-plum"));
    assertTrue(console.err().contains("the nearest is 'as4100-plumb'"), console.err());
    assertEquals(2, console.run("limits", "show", "as4100-plumb", "--size", "4.2"));
    assertTrue(console.err().startsWith("--size: '4.2' is not a value with a unit"));
  }
}
