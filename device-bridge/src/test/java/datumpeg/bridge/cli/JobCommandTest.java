package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobCommandTest {
  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = new SiteFolder(folder);
    console = site.console;
  }

  @Test
  void jobIsTakenInAndListed() {
    assertEquals(0, console.run("job", "add", "shed.toml"), console.err());
    assertEquals(
        "Stored revision 1 of larkrise-01 (Hay shed, Larkrise Farm)." + System.lineSeparator(),
        console.out());
    assertEquals(0, console.run("job", "list"));
    assertTrue(console.out().contains("larkrise-01  1         0"), console.out());
  }

  @Test
  void sameBytesChangeNothing() {
    console.run("job", "add", "shed.toml");
    assertEquals(0, console.run("job", "add", "shed.toml"));
    assertTrue(console.out().startsWith("Nothing new"), console.out());
    console.run("job", "show", "larkrise-01", "--json");
    assertEquals(1, json().integer("revision"));
  }

  @Test
  void otherBytesAreTheNextRevisionAndReadingsStay() throws IOException {
    readingsAndThen(JobTexts.LARKRISE + "\n# checked on site\n");
    assertEquals(0, console.run("job", "add", "shed.toml"));
    assertEquals(
        "Stored revision 2 of larkrise-01 (Hay shed, Larkrise Farm)." + System.lineSeparator(),
        console.out());
    console.run("job", "list", "--json");
    JsonObject job = (JsonObject) json().array("jobs").get(0);
    assertEquals(2, job.integer("revision"));
    assertEquals(3, job.integer("readingCount"));
  }

  @Test
  void planThatDropsAMeasuredPointWarnsAndLeavesItsReadingsOut() throws IOException {
    readingsAndThen(
        JobTexts.LARKRISE
            .replace("A4 = [\"18 m\"", "C4 = [\"18 m\"")
            .replace("slab.A4", "slab.C4"));
    assertEquals(0, console.run("job", "add", "shed.toml"), console.err());
    assertTrue(
        console.out().contains("Warning: 1 reading(s) taken before have no place in this plan"),
        console.out());
    assertTrue(console.out().contains("slab.A1-slab.A4  The slab has no corner A4"), console.out());
    assertEquals(0, console.run("job", "show", "larkrise-01", "--json"));
    assertEquals(1, json().array("strays").size());
    assertEquals(2, ((JsonObject) json().array("stages").get(0)).integer("readingCount"));
    assertEquals(0, console.run("reduce", "larkrise-01", "--json"), console.err());
    List<String> notes =
        ((JsonObject) json().array("stages").get(0))
            .array("notes").stream().map(note -> ((JsonObject) note).text("text")).toList();
    assertTrue(
        notes.stream()
            .anyMatch(
                text ->
                    text.startsWith("Left out: the reading of slab.A1-slab.A4, stage arrival: The")
                        && text.contains("no corner A4")),
        notes.toString());
    assertEquals(List.of(), json().array("notes"));
  }

  private void readingsAndThen(String newJobFile) throws IOException {
    SiteFolder.withReadings(folder);
    site.write("shed.toml", newJobFile);
  }

  @Test
  void jobFileWithMistakesIsRefusedAndNothingIsStored() throws IOException {
    site.write("shed.toml", JobTexts.larkriseWith("[\"6 m\", \"6 m\"", "[\"6 m\", \"5 m\""));
    assertEquals(2, console.run("job", "add", "shed.toml"));
    assertTrue(console.err().startsWith("shed.toml:18:1: The bays sum to 17000 mm"), console.err());
    assertFalse(Files.exists(console.recordFile()));
  }

  @Test
  void missingJobFileIsBadInput() {
    assertEquals(2, console.run("job", "add", "no.toml"));
    assertEquals("There is no job file no.toml." + System.lineSeparator(), console.err());
  }

  @Test
  void showTellsThePlanTheLimitsAndTheStages() throws IOException {
    SiteFolder.withReadings(folder);
    assertEquals(0, console.run("job", "show", "larkrise-01"));
    assertTrue(console.out().contains("bays 6000 mm + 6000 mm + 6000 mm"), console.out());
    assertTrue(console.out().contains("size / 500, at most 25 mm"), console.out());
    assertTrue(console.out().contains("verify against your copy"), console.out());
    assertTrue(console.out().contains("curing (hold point)"), console.out());
  }

  @Test
  void unknownJobIsToldWithTheNearest() throws IOException {
    SiteFolder.withJob(folder);
    assertEquals(2, console.run("job", "show", "larkrise-1"));
    assertEquals(
        "There is no job 'larkrise-1' in the record; the nearest is 'larkrise-01'."
            + System.lineSeparator(),
        console.err());
  }

  @Test
  void recordThatIsNotThereYetIsBadInput() {
    assertEquals(2, console.run("job", "list"));
    assertTrue(console.err().contains("There is no record at"), console.err());
  }

  @Test
  void jsonOutputIsOneDocument() {
    assertEquals(0, console.run("job", "add", "shed.toml", "--json"));
    assertTrue(json().truth("new"));
    assertEquals(1, json().integer("format"));
  }

  private JsonObject json() {
    return JsonReader.readObject(console.out(), "standard output");
  }
}
