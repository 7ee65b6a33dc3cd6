package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.sqlite.DerivedFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrendCommandTest {
  @TempDir Path folder;

  private JsonObject json(CrewsFolder site, String... words) {
    site.ok(words);
    return JsonReader.readObject(site.console.out(), "trend");
  }

  /** 3600 mm · tan 0.02° = 1.26 mm is the first column of the first job. */
  @Test
  void checkOverJobsComesInTheOrderOfTime() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    JsonObject trend =
        json(site, "trend", "--check", "column-plumb", "--target", "/across", "--json");
    List<JsonObject> points = trend.array("points").stream().map(JsonObject.class::cast).toList();
    assertEquals(12, points.size());
    assertEquals(6, trend.integer("jobCount"));
    assertEquals("amber-1 A2/across", points.get(0).text("name"));
    assertEquals("2026-03-02T09:00:00Z", points.get(0).text("at"));
    assertEquals(1.256637, number(points.get(0), "value"), 1e-6);
    assertEquals("blue-3 B2/across", points.get(11).text("name"));
    assertEquals(7.2, number(points.get(0), "upper"), 1e-9);
    assertEquals("individuals", trend.object("chart").text("kind"));
  }

  @Test
  void whatWasWorkedOutOnceIsKeptAndFollowsTheRecord() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    String[] words = {"trend", "--check", "column-plumb", "--round", "last", "--json"};
    JsonObject first = json(site, words);
    String whole = site.console.out();
    Path kept = DerivedFile.beside(site.console.recordFile());
    assertTrue(Files.exists(kept), "nothing was kept");
    JsonObject again = json(site, words);
    assertEquals(whole, site.console.out());
    Files.delete(kept);
    json(site, words);
    assertEquals(whole, site.console.out(), "what is kept is what is worked out afresh");
    site.ok("moved", "amber-1", "column.A2", "--why", "made plumb");
    JsonObject moved = json(site, words);
    assertEquals(first.array("points").size(), again.array("points").size());
    assertEquals(
        first.array("points").size() - 1,
        moved.array("points").size(),
        "a stale outcome speaks for nothing: " + site.console.out());
  }

  private static double number(JsonObject object, String name) {
    return ((JsonDecimal) object.get(name)).value().doubleValue();
  }

  @Test
  void onePointAJobIsTheMeanInPerCentOfWhatIsPermitted() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    JsonObject trend =
        json(
            site,
            "trend",
            "--check",
            "column-plumb",
            "--per",
            "job",
            "--scale",
            "permitted",
            "--crew",
            "Blue",
            "--chart",
            "ewma",
            "--weight",
            "0.3",
            "--json");
    assertEquals(3, trend.array("points").size());
    assertEquals("%", trend.text("unit"));
    JsonObject first = (JsonObject) trend.array("points").get(0);
    double mean = 3600 * (Math.tan(Math.toRadians(0.22)) + Math.tan(Math.toRadians(0.23))) / 2;
    assertEquals(100 * mean / 7.2, number(first, "value"), 1e-5);
    assertEquals(0.3, number(trend.object("chart"), "weight"), 1e-9);
  }

  @Test
  void tableOfThePointsIsWrittenAndFilteredByPeriod() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok(
        "trend",
        "--check",
        "column-plumb",
        "--from",
        "2026-03-03",
        "--to",
        "2026-03-04",
        "--csv",
        "plumb.csv");
    List<String> lines = Files.readAllLines(folder.resolve("plumb.csv"));
    assertEquals(5, lines.size());
    assertTrue(lines.get(0).startsWith("number,at,job,target,stage,round,crew,site,slab_by,"));
    assertTrue(lines.get(1).contains(",blue-1,A2/across,lift,1,Blue,"), lines.get(1));
  }

  @Test
  void textSaysWhatTheLimitsAreAndWhatTheyAreNot() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("trend", "--check", "column-plumb", "--rules", "western-electric");
    String text = site.console.out();
    assertTrue(text.contains("first round (the process), 12 point(s) from 6 job(s)"), text);
    assertTrue(text.contains("what is permitted is another matter."), text);
    assertTrue(text.contains("provisional (common practice, no source)"), text);
    assertTrue(text.contains("Points of one job share its crew, day and meter"), text);
  }

  @Test
  void targetOfAJobAcrossRoundsSaysWhatMoved() throws IOException {
    CrewsFolder site = new CrewsFolder(folder);
    site.job("amber-1", "Amber", "spirit", 2, 0.25);
    site.ok("moved", "amber-1", "column.A2", "--why", "prop set");
    Files.writeString(
        folder.resolve("again.csv"),
        "stage,quantity,target,value,unit,meter,at\n"
            + CrewsFolder.reading("A2", 0.03, "spirit", 3));
    site.ok("enter", "amber-1", "again.csv");
    site.ok("trend", "amber-1", "--check", "column-plumb", "--target", "A2/across");
    String text = site.console.out();
    assertTrue(text.contains("changed by -13.8 "), text);
    assertTrue(text.contains(": moved"), text);
    JsonObject trend = json(site, "trend", "amber-1", "--target", "A2/across", "--json");
    JsonObject target = (JsonObject) trend.array("targets").get(0);
    assertEquals(2, target.array("steps").size());
    assertTrue(((JsonObject) target.array("changes").get(0)).truth("moved"));
  }

  @Test
  void whatCannotBeAskedIsSaid() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    refused(site, "name it with --check", "trend");
    refused(site, "the nearest is 'column-plumb'", "trend", "--check", "column-plum");
    refused(
        site,
        "--crew 'Ambre'; the nearest is 'Amber'",
        "trend",
        "--check",
        "column-plumb",
        "--crew",
        "Ambre");
    refused(site, "--weight is 0.0", "trend", "--check", "column-plumb", "--weight", "0");
    refused(site, "--baseline is 1", "trend", "--check", "column-plumb", "--baseline", "1");
    refused(site, "leave JOB out", "trend", "amber-1", "--csv", "x.csv");
    refused(site, "no folder", "trend", "--check", "column-plumb", "--csv", "none/x.csv");
    refused(
        site,
        "expected one of western-electric, nelson, limits",
        "trend",
        "--check",
        "column-plumb",
        "--rules",
        "zone");
    refused(site, "There is no job 'amber-9'", "trend", "amber-9");
  }

  private static void refused(CrewsFolder site, String sentence, String... words) {
    assertEquals(2, site.console.run(words), site.console.out());
    assertTrue(site.console.err().contains(sentence), site.console.err());
  }

  @Test
  void checkWithoutOutcomesAndOnePointAloneSayWhyNothingIsDrawn() throws IOException {
    CrewsFolder site = CrewsFolder.withSixJobs(folder);
    site.ok("trend", "--check", "slab-size");
    assertTrue(site.console.out().contains("There is no point to show"), site.console.out());
    site.ok("trend", "--check", "column-plumb", "--per", "job", "--from", "2026-03-07");
    assertTrue(site.console.out().contains("One point gives no control limits"));
  }
}
