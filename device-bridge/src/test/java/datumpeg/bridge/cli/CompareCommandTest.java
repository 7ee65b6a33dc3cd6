package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareCommandTest {
  @TempDir Path folder;

  @Test
  void crewsThatDifferAreToldWithWhatCannotBeTold() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("compare", "--by", "crew", "--check", "column-plumb");
    String text = site.console.out();
    assertTrue(text.contains("Blue and Amber differ in their mean by +"), text);
    assertTrue(
        text.contains(
            "Crew and meter never vary apart: Amber only with spirit, Blue only with plumb-bob."),
        text);
    assertTrue(text.contains("The smallest group compared has 3 jobs"), text);
  }

  @Test
  void documentHasGroupsDifferencesAndSentences() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("compare", "--by", "crew", "--check", "column-plumb", "--json");
    JsonObject document = JsonReader.readObject(site.console.out(), "compare");
    JsonObject comparison = (JsonObject) document.array("comparisons").get(0);
    JsonObject amber = (JsonObject) comparison.array("groups").get(0);
    assertEquals("Amber", amber.text("name"));
    assertEquals(3, amber.integer("jobCount"));
    assertEquals(6, amber.integer("outcomeCount"));
    JsonObject difference = (JsonObject) comparison.array("differences").get(0);
    assertTrue(difference.truth("shown"));
  }

  @Test
  void guideShowsWhatIsPrinted() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("compare", "--by", "crew", "--check", "column-plumb");
    List<String> shown = new DocumentPage("guide/trends.md").blocks("text compare").get(0);
    assertEquals(
        "",
        DocumentPage.firstMissing(shown, site.console.out().lines().toList()),
        site.console.out());
  }

  /** Every check with outcomes, each with wider intervals for being one of several. */
  @Test
  void withoutACheckAllAreCompared() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("compare", "--by", "meter", "--csv", "jobs.csv");
    String text = site.console.out();
    assertTrue(text.contains("column-plumb by meter, 6 job(s)"), text);
    assertTrue(text.contains("portal-plumb by meter, 6 job(s)"), text);
    assertTrue(text.contains("97.50 % for all pairs together"), text);
    assertEquals(13, Files.readAllLines(folder.resolve("jobs.csv")).size());
  }

  @Test
  void oneSlabLayerAloneIsNothingToCompare() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("compare", "--by", "slab", "--check", "column-plumb");
    assertTrue(
        site.console.out().contains("Only one slab layer has outcomes of this check (Stonecroft)"),
        site.console.out());
    assertEquals(2, site.console.run("compare"));
    assertEquals(2, site.console.run("compare", "--by", "colour"));
    assertTrue(
        site.console.err().contains("expected one of crew, site, slab, meter"), site.console.err());
  }

  @Test
  void jobWithoutOutcomesAndMissingRecordAreSaid() throws IOException {
    CrewsFolder site = new CrewsFolder(folder);
    assertEquals(2, site.console.run("compare", "--by", "crew"));
    assertTrue(site.console.err().contains("There is no record"), site.console.err());
    SiteFolder.withJob(folder);
    site.ok("compare", "--by", "crew");
    assertTrue(site.console.out().contains("The record has no outcomes yet"));
  }
}
