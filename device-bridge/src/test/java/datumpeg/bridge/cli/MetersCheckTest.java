package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MetersCheckTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withReadings(folder).console;
  }

  private int check(String method, String... values) {
    List<String> words =
        new ArrayList<>(
            List.of("meters", "check", "laser", "--job", "larkrise-01", "--method", method));
    words.addAll(List.of(values));
    return console.run(words.toArray(String[]::new));
  }

  @Test
  void aMeterOutsideItsAccuracyPutsItsReadingsInDoubt() {
    assertEquals(
        0,
        check(
            "known-distance",
            "known=12 m",
            "known-uncertainty=0.2 mm",
            "reading=12.005 m",
            "reading=12005.5 mm",
            "reading=12.005 m"),
        console.err());
    assertTrue(console.out().contains("error +5.2 mm"), console.out());
    assertTrue(console.out().contains("OUTSIDE its stated accuracy"), console.out());
    assertTrue(console.out().contains("3 reading(s) of larkrise-01"), console.out());
    assertEquals(0, console.run("reduce", "larkrise-01"), console.err());
    assertTrue(
        console.out().contains("meter laser was outside its stated accuracy"), console.out());
    assertEquals(0, console.run("reduce", "larkrise-01", "--json"), console.err());
    assertTrue(console.out().contains("\"kind\": \"meter-outside\""), console.out());
    assertEquals(0, console.run("report", "larkrise-01", "-o", "job.html"), console.err());
    assertEquals(0, console.run("verify"), console.out());
  }

  @Test
  void whatOneMeterIsToBlameForIsNotSaidOfAnother() {
    assertEquals(0, check("known-distance", "known=12 m", "reading=12.105 m"), console.err());
    assertTrue(console.out().contains("3 reading(s) of larkrise-01"), console.out());
    assertEquals(
        0,
        console.run(
            "meters",
            "check",
            "lazer",
            "--job",
            "larkrise-01",
            "--method",
            "known-distance",
            "known=12 m",
            "reading=12 m"),
        console.err());
    assertFalse(console.out().contains("in doubt"), console.out());
    assertTrue(console.out().contains("describes no meter lazer (it has: laser"), console.out());
  }

  @Test
  void aMeterWithinItsAccuracyDoubtsNothing() {
    List<String> values = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      values.addAll(List.of("AB=5.0002 m", "BC=7 m", "AC=12 m"));
    }
    assertEquals(0, check("zero-constant", values.toArray(String[]::new)), console.err());
    assertTrue(console.out().contains("Within its stated accuracy"), console.out());
    assertEquals(0, console.run("reduce", "larkrise-01"), console.err());
    assertFalse(console.out().contains("outside its stated accuracy"), console.out());
  }

  @Test
  void theChecksOfOneJobCountForTheOthersOfItsOrganisation() {
    assertEquals(0, check("known-distance", "known=12 m", "reading=12 m"), console.err());
    try (SiteRecord record = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      assertEquals(1, record.meterChecks("local").size());
      assertEquals(List.of(), record.meterChecks("others"));
      assertEquals(
          Map.of("known", List.of("12 m"), "reading", List.of("12 m")),
          record.meterChecks("local").get(0).entry().values());
    }
  }

  @Test
  void theDocumentHasItsMembers() {
    assertEquals(
        0,
        check(
            "two-peg",
            "--json",
            "middle-P=1.503 m",
            "middle-Q=1.403 m",
            "near-P=1.620 m",
            "near-Q=1.526 m",
            "sight-P=2 m",
            "sight-Q=32 m"),
        console.err());
    JsonObject document = JsonReader.readObject(console.out(), "meters check");
    assertEquals(
        List.of(
            "format",
            "job",
            "meter",
            "method",
            "unit",
            "error",
            "expandedUncertainty",
            "limit",
            "probability",
            "verdict",
            "doubtedCount"),
        List.copyOf(document.members().keySet()));
    assertEquals("nonconforming", document.text("verdict"));
  }

  @Test
  void whatCannotBeWorkedOutIsRefusedAndNotStored() {
    assertEquals(2, check("known-distence", "known=12 m", "reading=12 m"));
    assertTrue(console.err().contains("the nearest is 'known-distance'"), console.err());
    assertEquals(2, check("known-distance", "known=12 m"));
    assertTrue(console.err().contains("lacks a value reading"), console.err());
    assertEquals(2, check("known-distance", "known=12 m", "reading=12"));
    assertTrue(console.err().contains("Nothing was stored"), console.err());
    assertFalse(console.err().contains(".."), console.err());
    assertEquals(2, check("known-distance", "known=12 m", "reding=12 m", "reading=12 m"));
    assertEquals(2, check("known-distance", "12 m"));
    assertTrue(console.err().contains("expected LABEL=VALUE"), console.err());
    try (SiteRecord record = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      assertEquals(List.of(), record.meterChecks("local"));
    }
  }
}
