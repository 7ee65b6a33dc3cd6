package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VoidAndMovedCommandTest {
  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = SiteFolder.withReadings(folder);
    console = site.console;
  }

  @Test
  void withdrawnReadingStaysAndIsNoLongerInForce() {
    String id = readings().get(1).text("reading");
    assertEquals(0, console.run("void", "larkrise-01", id, "--why", "wrong hook"), console.err());
    assertTrue(console.out().contains("slab.A1-slab.B4 20130 mm"), console.out());
    assertEquals(
        List.of(true, false, true), readings().stream().map(r -> r.truth("inForce")).toList());
    console.run("job", "show", "larkrise-01", "--json");
    JsonObject arrival = (JsonObject) json().array("stages").get(0);
    assertEquals(2, arrival.integer("readingCount"));
  }

  @Test
  void beginningOfAnIdIsEnoughWhenOnlyOneBeginsSo() {
    String id = readings().get(0).text("reading");
    List<String> others = readings().stream().skip(1).map(r -> r.text("reading")).toList();
    int enough = 1;
    while (beginsAny(others, id.substring(0, enough))) {
      enough++;
    }
    assertEquals(2, console.run("void", "larkrise-01", id.substring(0, 1), "--why", "wrong hook"));
    assertTrue(console.err().contains("The ids of 3 readings"), console.err());
    assertEquals(
        0, console.run("void", "larkrise-01", id.substring(0, enough), "--why", "wrong hook"));
  }

  private static boolean beginsAny(List<String> ids, String beginning) {
    return ids.stream().anyMatch(id -> id.startsWith(beginning));
  }

  @Test
  void readingThatIsUnknownOrWithdrawnIsToldSo() {
    assertEquals(2, console.run("void", "larkrise-01", "ffff", "--why", "x"));
    assertTrue(console.err().contains("no reading whose id begins with 'ffff'"), console.err());
    String id = readings().get(0).text("reading");
    assertEquals(0, console.run("void", "larkrise-01", id, "--why", "wrong hook"));
    assertEquals(2, console.run("void", "larkrise-01", id, "--why", "wrong hook"));
    assertTrue(console.err().contains("was withdrawn before"), console.err());
  }

  @Test
  void reasonMustBeGiven() {
    String id = readings().get(0).text("reading");
    assertEquals(2, console.run("void", "larkrise-01", id, "--why", " "));
    assertTrue(console.err().contains("--why is blank"), console.err());
    assertEquals(2, console.run("moved", "larkrise-01", "column.A2"));
    assertTrue(console.err().contains("--why"), console.err());
  }

  @Test
  void nextReadingsOfAMovedThingAreItsNextRound() throws IOException {
    String plumb = "stage,quantity,target,value,unit\nlift,tilt,column.A2/along,0.1,deg\n";
    site.write("plumb.csv", plumb);
    assertEquals(0, console.run("enter", "larkrise-01", "plumb.csv"));
    assertEquals(0, console.run("moved", "larkrise-01", "column.A2", "--why", "racked"));
    assertTrue(console.out().contains("the 1 taken before is stale until then"), console.out());
    site.write("again.csv", plumb + "lift,tilt,column.A3/along,0.2,deg\n");
    assertEquals(0, console.run("enter", "larkrise-01", "again.csv"), console.err());
    assertEquals(
        List.of("column.A2/along 1", "column.A2/along 2", "column.A3/along 1"),
        readings().stream()
            .filter(reading -> reading.text("stage").equals("lift"))
            .map(reading -> reading.text("target") + " " + reading.integer("round"))
            .sorted()
            .toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "column.A9 | column.A9 is not in the plan; its grid runs from A1 to B4.",
        "portal.5 | There is no portal frame 5; frames run from 1 to 4.",
        "wall.C | There is no wall C; expected wall.A or wall.B.",
        "the shed | 'the shed' is not a thing that can be moved",
      })
  void thingThatIsNotInThePlanCannotMove(String thing, String expected) {
    assertEquals(2, console.run("moved", "larkrise-01", thing, "--why", "racked"));
    assertTrue(console.err().contains(expected), console.err());
  }

  @ParameterizedTest
  @CsvSource({"column.A2", "portal.3", "wall.B", "line.A1", "tip.A2", "apex.2"})
  void thingOfThePlanMayMove(String thing) {
    assertEquals(0, console.run("moved", "larkrise-01", thing, "--why", "racked", "--json"));
    assertEquals(thing, json().text("thing"));
  }

  private List<JsonObject> readings() {
    console.run("job", "show", "larkrise-01", "--readings", "--json");
    return json().array("readings").stream().map(JsonObject.class::cast).toList();
  }

  private JsonObject json() {
    return JsonReader.readObject(console.out(), "standard output");
  }
}
