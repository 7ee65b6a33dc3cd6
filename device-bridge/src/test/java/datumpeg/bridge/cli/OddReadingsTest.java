package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Scraps, repeats and contradictions that a crew may enter: `reduce` ends with status 0 and an
 * answer that says what they are worth.
 */
class OddReadingsTest {
  private static final String HEADER = "stage,quantity,target,value,unit,meter\n";

  @TempDir Path folder;

  private SiteFolder entered(String job, String... rows) throws IOException {
    SiteFolder site = new SiteFolder(folder);
    site.write("shed.toml", job);
    assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
    site.write("odd.csv", HEADER + String.join("\n", rows) + "\n");
    assertEquals(0, site.console.run("enter", "larkrise-01", "odd.csv"), site.console.err());
    return site;
  }

  private static String plain(SiteFolder site) {
    assertEquals(0, site.console.run("reduce", "larkrise-01"), site.console.err());
    return site.console.out();
  }

  private static JsonObject stage(SiteFolder site) {
    assertEquals(0, site.console.run("reduce", "larkrise-01", "--json"), site.console.err());
    return (JsonObject)
        JsonReader.readObject(site.console.out(), "standard output").array("stages").get(0);
  }

  private static List<JsonObject> outcomes(JsonObject stage) {
    return stage.array("outcomes").stream().map(JsonObject.class::cast).toList();
  }

  private static List<JsonObject> notes(JsonObject stage, String kind) {
    return stage.array("notes").stream()
        .map(JsonObject.class::cast)
        .filter(note -> note.text("kind").equals(kind))
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "arrival,distance,slab.A1-slab.A4,NaN,m,|'NaN' is not a plain number",
        "arrival,distance,slab.A1-slab.A4,Infinity,m,|'Infinity' is not a plain number",
        "arrival,distance,slab.A1-slab.A4,1e400,m,|'1e400' is not a plain number",
        "arrival,distance,slab.A1-slab.A4,0,m,|'0' is not more than 0",
        "arrival,distance,slab.A1-slab.A4,-0.5,m,|'-0.5' is not more than 0",
        "arrival,height,slab.A1,NaN,mm,|'NaN' is not a plain number",
        "lift,tilt,column.A2/along,90,deg,|'90' is 90 deg or more from vertical",
        "lift,tilt,column.A2/along,-90,deg,|'-90' is 90 deg or more from vertical"
      })
  void whatIsNoReadingIsRefusedWithItsLine(String row, String expected) throws IOException {
    SiteFolder site = SiteFolder.withJob(folder);
    site.write("odd.csv", HEADER + row + "\n");
    assertEquals(2, site.console.run("enter", "larkrise-01", "odd.csv"));
    assertTrue(site.console.err().contains("odd.csv:2: "), site.console.err());
    assertTrue(site.console.err().contains(expected), site.console.err());
    assertEquals(0, site.console.run("reduce", "larkrise-01"), site.console.err());
  }

  @Test
  void oneDistanceAndOneLevelAreValuesAndSayWhatIsMissing() throws IOException {
    SiteFolder site =
        entered(
            JobTexts.LARKRISE,
            "arrival,distance,slab.A1-slab.A4,18.002,m,laser",
            "arrival,height,slab.A1,100,mm,");
    JsonObject stage = stage(site);
    assertEquals(
        1, outcomes(stage).stream().filter(o -> o.text("check").equals("slab-size")).count());
    assertTrue(outcomes(stage).stream().noneMatch(o -> o.text("check").equals("slab-level")));
    assertFalse(notes(stage, "not-measured").isEmpty());
    assertTrue(plain(site).contains("Note (not measured):"), site.console.out());
  }

  /** One roof diagonal is no pair: notes say what is missing, and no table of nothing follows. */
  @Test
  void aStageWithoutOutcomesPrintsNoTable() throws IOException {
    SiteFolder site = entered(JobTexts.LARKRISE, "roofing,distance,eave.A1-apex.2,7.45,m,laser");
    String out = plain(site);
    assertTrue(out.contains("Nothing to decide yet: no check has all it needs."), out);
    assertFalse(out.contains("verdict") || out.contains("Millimetres;"), out);
    assertTrue(
        out.contains("from column A2 at the eave to the apex of frame 1"), "in words: " + out);
  }

  @Test
  void sixEqualDistancesContradictEachOther() throws IOException {
    SiteFolder site =
        entered(
            JobTexts.LARKRISE,
            "arrival,distance,slab.A1-slab.A4,9,m,laser",
            "arrival,distance,slab.A4-slab.B4,9,m,laser",
            "arrival,distance,slab.B4-slab.B1,9,m,laser",
            "arrival,distance,slab.B1-slab.A1,9,m,laser",
            "arrival,distance,slab.A1-slab.B4,9,m,laser",
            "arrival,distance,slab.A4-slab.B1,9,m,laser");
    JsonObject stage = stage(site);
    assertFalse(notes(stage, "slip-suspected").isEmpty() && notes(stage, "undetermined").isEmpty());
    assertTrue(
        List.of("stop", "measure-again").contains(stage.object("answer").text("kind")),
        stage.object("answer").toString());
  }

  /** Whichever of the six is missing: two corners of some fall on one place. */
  @Test
  void fiveEqualDistancesEndInAnAnswerToo() throws IOException {
    List<String> all =
        List.of("A1-slab.A4", "A4-slab.B4", "B4-slab.B1", "B1-slab.A1", "A1-slab.B4", "A4-slab.B1");
    SiteFolder site = SiteFolder.withJob(folder);
    for (String missing : all) {
      String rows =
          all.stream()
              .filter(pair -> !pair.equals(missing))
              .map(pair -> "arrival,distance,slab." + pair + ",9,m,laser\n")
              .collect(Collectors.joining());
      site.write("shed.toml", JobTexts.larkriseWith("larkrise-01", "five-" + all.indexOf(missing)));
      assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
      site.write("odd.csv", HEADER + rows);
      String job = "five-" + all.indexOf(missing);
      assertEquals(0, site.console.run("enter", job, "odd.csv"), site.console.err());
      assertEquals(0, site.console.run("reduce", job), missing + ": " + site.console.err());
    }
  }

  @Test
  void equalLevelsAreFlat() throws IOException {
    SiteFolder site =
        entered(
            JobTexts.LARKRISE,
            "arrival,height,slab.A1,100,mm,",
            "arrival,height,slab.A4,100,mm,",
            "arrival,height,slab.B4,100,mm,",
            "arrival,height,slab.B1,100,mm,");
    JsonObject spread =
        outcomes(stage(site)).stream()
            .filter(o -> o.text("check").equals("slab-level"))
            .findFirst()
            .orElseThrow();
    assertTrue(spread.get("deviation").toString().contains("0"), spread.toString());
  }

  /** 11 mm apart where ±1.5 mm is stated: told with both readings, before anything else. */
  @Test
  void contradictingReadingsOfOneTargetAreToldWithTheirSpread() throws IOException {
    SiteFolder site =
        entered(
            JobTexts.LARKRISE,
            "lift,distance,base.A2-base.B2,8.572,m,laser",
            "lift,distance,base.A2-base.B2,8.583,m,laser");
    JsonObject stage = stage(site);
    List<JsonObject> suspected = notes(stage, "slip-suspected");
    assertEquals(1, suspected.size(), suspected.toString());
    assertTrue(suspected.get(0).text("text").contains("11"), suspected.toString());
    assertEquals(2, suspected.get(0).array("readings").size());
    assertEquals("measure-again", stage.object("answer").text("kind"));
  }

  @Test
  void aJobWithoutLimitsHasValuesAndNoVerdictsAndSaysSo() throws IOException {
    String unlimited = JobTexts.LARKRISE.replaceAll("(?s)\\[tolerances\\].*?\\n\\n", "");
    SiteFolder site =
        entered(
            unlimited,
            "arrival,distance,slab.A1-slab.A4,18.030,m,laser",
            "arrival,distance,slab.A4-slab.B4,9.000,m,laser");
    JsonObject stage = stage(site);
    assertFalse(outcomes(stage).isEmpty());
    for (JsonObject outcome : outcomes(stage)) {
      assertTrue(outcome.get("verdict") instanceof JsonNull, outcome.toString());
      assertTrue(outcome.get("probability") instanceof JsonNull, outcome.toString());
    }
    assertEquals("not-decided", stage.object("answer").text("kind"));
    assertTrue(plain(site).contains("the job gives no limits"), site.console.out());
    assertEquals(0, site.console.run("reduce", "larkrise-01", "--strict"));
  }

  /** The job describes a laser and a tilt meter: what is taken of its level is said by name. */
  @Test
  void aLevelTheJobDoesNotDescribeIsAssumedAndSaid() throws IOException {
    SiteFolder site =
        entered(
            JobTexts.LARKRISE,
            "arrival,staff,slab.A1,1500,mm,rotating-7",
            "arrival,staff,slab.A4,1501,mm,rotating-7",
            "arrival,staff,slab.B4,1502,mm,rotating-7",
            "arrival,staff,slab.B1,1500,mm,rotating-7");
    JsonObject stage = stage(site);
    assertTrue(outcomes(stage).stream().anyMatch(o -> o.text("check").equals("slab-level")));
    List<JsonObject> assumed = notes(stage, "assumed");
    assertTrue(
        assumed.stream().anyMatch(note -> note.text("text").contains("rotating-7")),
        assumed.toString());
    assertTrue(plain(site).contains("Note (assumed):"), site.console.out());
  }
}
