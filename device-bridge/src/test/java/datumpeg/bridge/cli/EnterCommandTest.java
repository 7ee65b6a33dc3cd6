package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnterCommandTest {
  private static final String HEADER = "stage,quantity,target,value,unit\n";
  private static final String GOOD = "arrival,distance,slab.A1-slab.A4,18.004,m\n";

  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = SiteFolder.withJob(folder);
    console = site.console;
  }

  @Test
  void rowsAreStoredAndCounted() {
    assertEquals(0, console.run("enter", "larkrise-01", "slab.csv"), console.err());
    assertTrue(console.out().startsWith("Stored 3 reading(s) of larkrise-01"), console.out());
    assertTrue(console.out().contains("arrival  distance  3"), console.out());
    assertEquals(
        List.of("slab.A1-slab.A4", "slab.A1-slab.B4", "slab.A1-slab.B1"), stored("target"));
    assertEquals(List.of("18.004", "20130", "9,002"), stored("value"));
  }

  @Test
  void emptyTimeIsNowAndEmptyRoundIsTheFirst() {
    console.run("enter", "larkrise-01", "slab.csv");
    assertEquals("2026-03-02T08:15:30Z", stored("at").get(0));
    assertTrue(console.out().contains("\"round\": 1"), console.out());
  }

  @Test
  void badValueInTheLastRowStoresNothing() throws IOException {
    site.write("bad.csv", SiteFolder.SLAB + "arrival,distance,slab.B1-slab.B4,18.0O1,m,laser\n");
    assertEquals(2, console.run("enter", "larkrise-01", "bad.csv"));
    assertTrue(
        console.err().startsWith("bad.csv:5: Column 'value': '18.0O1' is not a plain number"),
        console.err());
    assertTrue(console.err().strip().endsWith("Nothing was stored."), console.err());
    assertEquals(List.of(), stored("target"));
    assertEquals(0, console.run("enter", "larkrise-01", "slab.csv"));
  }

  @Test
  void sameFileTwiceIsRefusedUnlessAskedForAgain() throws IOException {
    console.run("enter", "larkrise-01", "slab.csv");
    site.write("copy.csv", SiteFolder.SLAB);
    assertEquals(2, console.run("enter", "larkrise-01", "copy.csv"));
    assertTrue(console.err().contains("was entered for the job larkrise-01 before"), console.err());
    assertEquals(3, stored("target").size());
    assertEquals(0, console.run("enter", "larkrise-01", "copy.csv", "--again"));
    assertEquals(6, stored("target").size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stage,quantity,target,valeu,unit | The column 'valeu' is unknown; the nearest is 'value'.",
        "stage,quantity,target,value | The column 'unit' is missing.",
        "stage,quantity,target,value,unit,unit | The column 'unit' is there twice.",
        "stage;quantity;target;value;unit | The columns are parted by ';'; expected ','.",
      })
  void wrongColumnIsRefusedWithItsName(String header, String expected) throws IOException {
    String message = refused(header + "\n" + GOOD);
    assertTrue(message.startsWith("t.csv:1: "), message);
    assertTrue(message.contains(expected), message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "arival,distance,slab.A1-slab.A4,18,m|'arival' is no stage of the job; the nearest is 'arrival'",
        "arrival,distanse,slab.A1-slab.A4,18,m|'distanse' is no quantity; the nearest is 'distance'",
        "arrival,distance,slab.A1,18,m|Column 'target': 'slab.A1' is not a distance",
        "arrival,distance,slab.A1-slab.A9,18,m|Column 'target': The slab has no corner A9",
        "arrival,height,slab.@(30;1),18,mm|slab.@(30;1) lies beside the slab's outline",
        "arrival,distance,slab.A1-slab.A4,-18,m|'-18' is not more than 0, which a distance must be",
        "arrival,distance,slab.A1-slab.A4,18,|Column 'value': '18' is not a value with a unit",
        "arrival,distance,slab.A1-slab.A4,18 m,m|'18 m' is not a plain number, which the unit column 'm' needs",
        "arrival,distance,slab.A1-slab.A4,18,deg|A distance is a length, found '18 deg'",
        "arrival,distance,slab.A1-slab.A4,18,furlong|'furlong' is not a unit",
        "arrival,distance,slab.A1-slab.A4,\"1,800.4\",m|'1,800.4' is not a plain number",
        "arrival,distance,slab.A1-slab.A4,18,004,m|The row has 6 fields; expected 5",
        "lift,tilt,column.A2,0.1,deg|'column.A2' names no direction",
        "lift,tilt,column.A2/along,95,deg|'95' is 90 deg or more from vertical",
        "lift,tilt,mullion.1.M1/along,1,deg|The plan places no mullion",
        "curing,attribute,edge-sound,maybe,|The answer to a question is 'maybe'; expected yes or no",
        "arrival,attribute,edge-sound,yes,|The stage arrival has no question edge-sound; it has none.",
      })
  void badFieldIsToldWithItsColumn(String row, String expected) throws IOException {
    String message = refused(HEADER + GOOD + row + "\n");
    assertTrue(message.startsWith("t.csv:3: "), message);
    assertTrue(message.contains(expected), message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "face|arrival,distance,slab.A1-slab.A4,18,m,1|'1' belongs to a tilt",
        "face|lift,tilt,column.A2/along,0.1,deg,3|'3' is no face of a meter; expected 1, 2",
        "up|lift,tilt,column.A2/along,0.1,deg,4 m|'4 m' is not on the column; expected from 0 mm to 3600.0 mm",
        "up|lift,tilt,column.A2/along,0.1,deg,1.8|Column 'up': '1.8' is not a value with a unit",
        "at|arrival,distance,slab.A1-slab.A4,18,m,2026-03-02 08:15|is no time of ISO 8601 with an offset",
        "round|arrival,distance,slab.A1-slab.A4,18,m,0|'0' is no round; expected a whole number from 1",
        "meter|lift,tilt,column.A2/along,0.1,deg,laser|'laser' measures distance, which cannot give a tilt",
      })
  void badOptionalFieldIsToldWithItsColumn(String column, String row, String expected)
      throws IOException {
    String message = refused(HEADER.strip() + "," + column + "\n" + row + "\n");
    assertTrue(message.startsWith("t.csv:2: "), message);
    assertTrue(message.contains(expected), message);
  }

  @Test
  void quoteThatIsNeverClosedIsRefused() throws IOException {
    assertTrue(
        refused(HEADER + "arrival,distance,\"slab.A1-slab.A4,18,m\n").contains("never closed"));
  }

  @Test
  void tableWithoutRowsIsRefused() throws IOException {
    assertTrue(refused("").contains("The table is empty"));
    assertTrue(refused(HEADER).contains("no row below its column names"));
    assertTrue(refused(HEADER + ",,,,\n").contains("no row below its column names"));
  }

  @Test
  void columnsStandInAnyOrderAndAByteOrderMarkIsAccepted() throws IOException {
    site.write(
        "t.csv",
        "\uFEFFunit,value,note,target,stage,quantity,face,up\r\n"
            + "deg,\"0,32\",\"turned \"\"end for end\"\"\",column.A2/along,lift,tilt,2,1.8 m\r\n"
            + ",29 ft 6 3/8 in,,slab.A1-slab.B1,arrival,distance,,\r\n"
            + ",yes,,edge-sound,curing,attribute,,\r\n");
    assertEquals(0, console.run("enter", "larkrise-01", "t.csv"), console.err());
    assertEquals(List.of("0,32", "29 ft 6 3/8 in", "yes"), stored("value"));
  }

  @Test
  void timeAndRoundAreKeptAsGiven() throws IOException {
    site.write(
        "t.csv",
        HEADER.strip()
            + ",at,round\narrival,distance,slab.A1-slab.A4,18,m,2026-03-02T09:00:00+01:00,4\n");
    assertEquals(0, console.run("enter", "larkrise-01", "t.csv"), console.err());
    assertEquals(List.of("2026-03-02T09:00+01:00"), stored("at"));
    assertTrue(console.out().contains("\"round\": 4"), console.out());
  }

  @Test
  void unknownJobAndMissingFileAreBadInput() {
    assertEquals(2, console.run("enter", "larkrise-02", "slab.csv"));
    assertTrue(console.err().contains("the nearest is 'larkrise-01'"), console.err());
    assertEquals(2, console.run("enter", "larkrise-01", "no.csv"));
    assertEquals("There is no file no.csv." + System.lineSeparator(), console.err());
  }

  @Test
  void recordThatIsNotThereIsNotMade() {
    assertEquals(2, console.run("--record", "other.db", "enter", "larkrise-01", "slab.csv"));
    assertTrue(console.err().contains("There is no record at"), console.err());
    assertTrue(Files.notExists(folder.resolve("other.db")));
  }

  private String refused(String table) throws IOException {
    site.write("t.csv", table);
    assertEquals(2, console.run("enter", "larkrise-01", "t.csv"), console.out());
    String message = console.err();
    assertEquals(List.of(), stored("target"));
    return message;
  }

  private List<String> stored(String member) {
    assertEquals(
        0, console.run("job", "show", "larkrise-01", "--readings", "--json"), console.err());
    return JsonReader.readObject(console.out(), "standard output").array("readings").stream()
        .map(reading -> ((JsonObject) reading).text(member))
        .toList();
  }
}
