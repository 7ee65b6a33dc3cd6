package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonValue;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReduceCommandTest {
  /** A slab whose shape is determined: sides and diagonals, side A 15 mm long. */
  private static final String SLAB =
      """
      stage,quantity,target,value,unit,meter
      arrival,distance,slab.A1-slab.A4,18.015,m,laser
      arrival,distance,slab.A4-slab.B4,9.000,m,laser
      arrival,distance,slab.B4-slab.B1,18.000,m,laser
      arrival,distance,slab.B1-slab.A1,9.000,m,laser
      arrival,distance,slab.A1-slab.B4,20.131,m,laser
      arrival,distance,slab.A4-slab.B1,20.131,m,laser
      arrival,staff,slab.A1,1500,mm,
      arrival,staff,slab.A4,1501,mm,
      """;

  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = SiteFolder.withJob(folder);
    console = site.console;
    site.write("shape.csv", SLAB);
    assertEquals(0, console.run("enter", "larkrise-01", "shape.csv"), console.err());
  }

  private JsonObject reduced() {
    assertEquals(0, console.run("reduce", "larkrise-01", "--json"), console.err());
    return JsonReader.readObject(console.out(), "standard output");
  }

  private static List<JsonObject> outcomes(JsonObject findings) {
    JsonObject stage = (JsonObject) findings.array("stages").get(0);
    return stage.array("outcomes").stream().map(JsonObject.class::cast).toList();
  }

  /** Two rows of frames, three readings each; on side B the running one is 17.5 mm too long. */
  @Test
  void conformingOutcomesOfReadingsThatContradictEachOtherAreMarked() throws IOException {
    site.write(
        "rows.csv",
        """
        stage,quantity,target,value,unit,meter
        lift,distance,base.A1-base.A2,5.966,m,laser
        lift,distance,base.A2-base.A3,5.998,m,laser
        lift,distance,base.A1-base.A3,11.964,m,laser
        lift,distance,base.B1-base.B2,5.966,m,laser
        lift,distance,base.B2-base.B3,5.998,m,laser
        lift,distance,base.B1-base.B3,11.9815,m,laser
        """);
    assertEquals(0, console.run("enter", "larkrise-01", "rows.csv"), console.err());
    console.run("reduce", "larkrise-01", "--stage", "lift");
    List<String> rows =
        console.out().lines().filter(row -> row.startsWith("  frame-spacing")).toList();
    assertEquals(4, rows.size(), console.out());
    for (String row : rows) {
      assertEquals(row.contains(" B"), row.endsWith("conforming, in doubt"), console.out());
    }
    assertTrue(
        console.out().contains("In doubt: readings it follows from contradict each other."),
        console.out());
    assertEquals(0, console.run("reduce", "larkrise-01", "--stage", "arrival"), console.err());
    assertFalse(console.out().contains("In doubt"), console.out());
  }

  @Test
  void theDocumentHasTheFormOthersRelyOn() {
    JsonObject findings = reduced();
    assertEquals(1, findings.integer("format"));
    assertEquals("larkrise-01", findings.text("job"));
    assertEquals(64, findings.text("jobDigest").length());
    JsonObject stage = (JsonObject) findings.array("stages").get(0);
    assertEquals("arrival", stage.text("stage"));
    assertEquals(8, stage.integer("readingCount"));
    assertEquals(
        List.of(
            "check",
            "target",
            "round",
            "unit",
            "nominal",
            "measured",
            "deviation",
            "expandedUncertainty",
            "coverage",
            "lower",
            "upper",
            "limitSource",
            "probability",
            "verdict",
            "stale",
            "remedy",
            "aside",
            "readings"),
        List.copyOf(outcomes(findings).get(0).members().keySet()));
    JsonObject slab = (JsonObject) stage.array("networks").get(0);
    assertEquals("the slab", slab.text("name"));
    assertEquals(6, slab.array("readings").size());
    JsonObject a1 = stage.object("points").object("slab.A1");
    assertEquals(List.of("x", "y", "ux", "uy", "cxy"), List.copyOf(a1.members().keySet()));
  }

  @Test
  void verdictIsNullExactlyWhereThereIsNoLimit() {
    List<JsonObject> outcomes = outcomes(reduced());
    for (JsonObject outcome : outcomes) {
      boolean limited = !(outcome.get("limitSource") instanceof JsonNull);
      assertEquals(limited, !(outcome.get("verdict") instanceof JsonNull), outcome.toString());
      assertEquals(limited, !(outcome.get("probability") instanceof JsonNull), outcome.toString());
    }
    assertTrue(outcomes.stream().anyMatch(o -> o.get("verdict") instanceof JsonNull));
    assertTrue(outcomes.stream().anyMatch(o -> !(o.get("verdict") instanceof JsonNull)));
  }

  @Test
  void lengthsAreMillimetresRoundedToAMillionth() {
    for (JsonObject outcome : outcomes(reduced())) {
      for (JsonValue value : outcome.members().values()) {
        if (value instanceof JsonDecimal decimal) {
          assertTrue(decimal.value().stripTrailingZeros().scale() <= 6, outcome.toString());
        }
      }
    }
    JsonObject side =
        outcomes(reduced()).stream()
            .filter(o -> o.text("check").equals("slab-size") && o.text("target").equals("A1-A4"))
            .findFirst()
            .orElseThrow();
    JsonValue nominal = side.get("nominal");
    assertTrue(nominal.toString().contains("18000"), nominal.toString());
  }

  @Test
  void equalReadingsGiveEqualBytesOnASecondRun() {
    console.run("reduce", "larkrise-01", "--json");
    String once = console.out();
    console.run("reduce", "larkrise-01", "--json");
    assertEquals(once, console.out());
  }

  @Test
  void strictTellsByItsStatusThatSomethingIsNonconforming() {
    assertTrue(
        outcomes(reduced()).stream()
            .anyMatch(o -> o.get("verdict").toString().contains("nonconforming")));
    assertEquals(0, console.run("reduce", "larkrise-01"));
    assertEquals(1, console.run("reduce", "larkrise-01", "--strict"));
  }

  @Test
  void theAnswerStandsFirstInThePlainForm() {
    assertEquals(0, console.run("reduce", "larkrise-01", "--stage", "arrival"));
    List<String> lines = console.out().lines().toList();
    assertTrue(lines.get(2).startsWith("Stage arrival, 8 reading(s)"), console.out());
    assertTrue(lines.get(3).startsWith("  The lines fit on the slab"), console.out());
    assertTrue(lines.get(3).contains("But the slab is not as ordered."), console.out());
    assertTrue(console.out().contains("Note (not measured):"), console.out());
    assertTrue(
        console.out().contains("Note (assumed): Some readings name no meter"), console.out());
  }

  @Test
  void stageRevisionAndRecordThatAreNotAreSaid() {
    assertEquals(2, console.run("reduce", "larkrise-01", "--stage", "nowhere"));
    assertTrue(console.err().contains("handover"), console.err());
    assertEquals(2, console.run("reduce", "larkrise-01", "--revision", "7"));
    assertTrue(console.err().contains("newest is 1"), console.err());
    assertEquals(2, console.run("reduce", "larkrise-01", "--record", "absent.db"));
    assertTrue(console.err().contains("absent.db"), console.err());
  }

  @Test
  void aJobFileChangedAfterwardsKeepsTheReadingsAndTheOldRevision() throws IOException {
    site.write(
        "shed.toml",
        datumpeg.bridge.jobfile.JobTexts.larkriseWith(
            "slab-size = \"10 mm\"", "slab-size = \"40 mm\""));
    assertEquals(0, console.run("job", "add", "shed.toml"), console.err());
    assertEquals("conforming", verdictOfSideA());
    assertEquals(0, console.run("reduce", "larkrise-01", "--revision", "1", "--json"));
    assertTrue(console.out().contains("\"nonconforming\""), console.out());
  }

  private String verdictOfSideA() {
    return outcomes(reduced()).stream()
        .filter(o -> o.text("check").equals("slab-size") && o.text("target").equals("A1-A4"))
        .findFirst()
        .orElseThrow()
        .text("verdict");
  }
}
