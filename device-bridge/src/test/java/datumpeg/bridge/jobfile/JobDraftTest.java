package datumpeg.bridge.jobfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.job.Job;
import datumpeg.bridge.jobfile.JobDraft.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class JobDraftTest {
  private static JobDraft filledIn() {
    return JobDraft.empty()
        .with("job.id", Kind.TEXT, "ashby-12")
        .with("job.name", Kind.TEXT, "Cart \"shed\", Ashby")
        .with("job.site", Kind.TEXT, "Ashby")
        .with("job.crew", Kind.TEXT, "Blue")
        .with("job.started", Kind.DAY, "2026-04-01")
        .with("building.span", Kind.TEXT, "6 m")
        .with("building.length", Kind.TEXT, "9 m")
        .with("building.eave_height", Kind.TEXT, "2.7 m")
        .with("building.pitch", Kind.TEXT, "15 deg")
        .with("building.bays", Kind.LIST, "4.5 m; 4.5 m")
        .with("sections.column_depth", Kind.TEXT, "120 mm")
        .with("sections.column_width", Kind.TEXT, "60 mm")
        .with("sections.side_girt_depth", Kind.TEXT, "60 mm")
        .with("sections.end_girt_depth", Kind.TEXT, "60 mm")
        .with("sections.rafter_depth", Kind.TEXT, "120 mm")
        .with("tolerances.slab-square", Kind.TEXT, "8 mm");
  }

  @Test
  void jobThatIsFilledInIsAJob() {
    JobDraft.Checked checked = filledIn().check();
    assertEquals(List.of(), checked.elsewhere());
    assertEquals(java.util.Map.of(), checked.atEntries());
    Job job = checked.job().orElseThrow();
    assertEquals("Cart \"shed\", Ashby", job.identity().name());
    assertEquals(2, job.setOut().building().baysMetres().size());
  }

  @Test
  void limitOfSeveralEntriesIsTypedInOneLine() {
    for (String[] typed :
        new String[][] {
          {"lower -5 mm, upper 10 mm", "{ lower = \"-5 mm\", upper = \"10 mm\" }"},
          {"ratio 500, cap 25 mm", "{ ratio = 500, cap = \"25 mm\" }"},
          {"formula max(4, 1.5*sqrt(L))", "{ formula = \"max(4, 1.5*sqrt(L))\" }"},
          {"lower -2,5 mm, upper 3 mm", "{ lower = \"-2,5 mm\", upper = \"3 mm\" }"},
          {
            "up to 3 m: 8 mm, beyond: 12 mm",
            "{ steps = [{ up_to = \"3 m\", limit = \"8 mm\" }, { limit = \"12 mm\" }],"
                + " interpolate = \"none\" }"
          },
          {
            "at 1 m: 10 mm, at 4 m: 13 mm, linear between, to whole mm, source sheet 4",
            "{ steps = [{ up_to = \"1 m\", limit = \"10 mm\" },"
                + " { up_to = \"4 m\", limit = \"13 mm\" }],"
                + " interpolate = \"linear\", round = \"1 mm\", source = \"sheet 4\" }"
          },
          {
            "rule en1090-portal-mean, source our copy, table 3",
            "{ rule = \"en1090-portal-mean\", source = \"our copy, table 3\" }"
          },
        }) {
      JobDraft draft = filledIn().with("tolerances.portal-plumb", Kind.LIMIT, typed[0]);
      assertTrue(draft.toml().contains("portal-plumb = " + typed[1]), draft::toml);
      assertTrue(draft.check().job().isPresent(), () -> draft.check().toString());
      JobDraft again = JobDraft.of(draft.toml());
      assertEquals(typed[0], again.text("tolerances.portal-plumb"));
      assertFalse(again.isTable("tolerances.portal-plumb"));
    }
  }

  @Test
  void limitThatIsNoOneLineIsAText() {
    JobDraft draft = filledIn().with("tolerances.portal-plumb", Kind.LIMIT, "lower 5 mm or so, 3");
    assertTrue(draft.check().atEntries().containsKey("tolerances.portal-plumb"), draft::toml);
    JobDraft steps = JobDraft.of("[tolerances]\nslab-size = { steps = [{ limit = \"12 mm\" }] }\n");
    assertTrue(steps.isTable("tolerances.slab-size"));
    assertEquals("", steps.text("tolerances.slab-size"));
  }

  @Test
  void mistakeIsToldAtItsEntry() {
    JobDraft draft =
        filledIn()
            .with("building.bays", Kind.LIST, "4.5 m, 4.4 m")
            .with("building.pitch", Kind.TEXT, "steep")
            .with("job.started", Kind.DAY, "last week")
            .with("job.crew", Kind.TEXT, "");
    JobDraft.Checked checked = draft.check();
    assertTrue(checked.job().isEmpty());
    assertTrue(
        checked.atEntries().getOrDefault("building.pitch", "").contains("steep"),
        checked::toString);
    assertTrue(checked.atEntries().containsKey("job.started"), checked::toString);
    assertEquals(
        "The key 'job.crew' is missing.", checked.atEntries().get("job.crew"), checked::toString);
  }

  @Test
  void baysThatDoNotSumAreToldAtTheBays() {
    JobDraft.Checked checked = filledIn().with("building.bays", Kind.LIST, "4.5 m, 4.4 m").check();
    assertTrue(
        checked.atEntries().getOrDefault("building.bays", "").contains("The bays sum to"),
        checked::toString);
  }

  /** All that no field of a form shows stays: openings, steps of limits, stages of one's own. */
  @Test
  void everySampleComesBackAsTheSameJob() throws IOException {
    Path samples = Path.of(System.getProperty("datumpeg.root"), "sample-readings");
    for (String text :
        List.of(
            JobTexts.LARKRISE,
            Files.readString(samples.resolve("larkrise-01/job.toml")),
            Files.readString(samples.resolve("quarrybend-02/job.toml")))) {
      JobDraft draft = JobDraft.of(text);
      assertSameJob(JobFile.read(text, "as given"), JobFile.read(draft.toml(), "as written"));
      assertEquals(draft, JobDraft.of(draft.toml()));
      Job renamed = JobFile.read(draft.with("job.crew", Kind.TEXT, "Violet").toml(), "as written");
      assertEquals("Violet", renamed.identity().crew());
    }
  }

  private static void assertSameJob(Job given, Job written) {
    assertEquals(given.setOut().building(), written.setOut().building());
    assertEquals(given.setOut().slab(), written.setOut().slab());
    assertEquals(given.setOut().openings(), written.setOut().openings());
    assertEquals(given.setOut().details(), written.setOut().details());
    Job withItsPlan =
        new Job(
            written.identity(),
            given.setOut(),
            written.tolerances(),
            written.meters(),
            written.pointDefinitionsMetres(),
            written.decision(),
            written.stages(),
            written.props(),
            written.steel());
    assertEquals(given, withItsPlan);
  }

  @Test
  void entryIsTakenAwayByABlankText() {
    JobDraft draft = filledIn().with("tolerances.slab-square", Kind.TEXT, " ");
    assertFalse(draft.toml().contains("tolerances"), draft.toml());
    assertEquals("", draft.text("tolerances.slab-square"));
    assertEquals(List.of(), draft.keys("tolerances"));
  }

  @Test
  void tableIsNotTakenForAText() {
    JobDraft draft = JobDraft.of(JobTexts.LARKRISE);
    assertTrue(draft.isTable("slab.corners"));
    assertEquals("", draft.text("slab.corners"));
    assertEquals("6 m, 6 m, 6 m", draft.text("building.bays"));
    assertEquals("2026-03-02", draft.text("job.started"));
    assertEquals("1", draft.text("job.erected_from"));
  }

  @Test
  void decimalCommasAndPointsWithSemicolonsStayInTheirItems() {
    JobDraft draft =
        JobDraft.empty()
            .with("building.bays", Kind.LIST, "4,5 m; 4,5 m")
            .with("slab.level_points", Kind.LIST, "slab.A1, slab.@(9.0;4.5), seat.A2");
    assertEquals("4,5 m; 4,5 m", draft.text("building.bays"));
    assertTrue(draft.toml().contains("\"slab.@(9.0;4.5)\", \"seat.A2\""), draft.toml());
  }

  @Test
  void everyEntryIsTold() {
    JobDraft draft =
        JobDraft.of(
            """
            [tolerances]
            slab-level = { steps = [{ up_to = "3 m", limit = "8 mm" }] }
            slab-size = { lower = "-2 mm", upper = "5 mm" }
            [job]
            id = "a"
            started = 2026-03-02
            """);
    assertEquals(
        java.util.Map.of(
            "tolerances.slab-level.steps", "up_to 3 m, limit 8 mm",
            "tolerances.slab-size", "lower -2 mm, upper 5 mm",
            "job.id", "a",
            "job.started", "2026-03-02"),
        draft.leaves());
  }

  @Test
  void whatIsNotTomlIsSaid() {
    JobFileException said = assertThrows(JobFileException.class, () -> JobDraft.of("[job\nid = 1"));
    assertTrue(String.valueOf(said.getMessage()).contains("This is not TOML"), said.getMessage());
  }

  @Test
  void itemsOfListsAreChangedOneByOne() {
    JobDraft draft =
        filledIn()
            .with("slab.corners.A1[2]", Kind.TEXT, "0 m")
            .with("flatness.lines.L1[2][1]", Kind.TEXT, "4 m");
    assertEquals("", draft.text("slab.corners.A1[1]"));
    assertEquals("0 m", draft.text("slab.corners.A1[2]"));
    assertEquals("", draft.text("slab.corners.A1[3]"));
    assertEquals("4 m", draft.text("flatness.lines.L1[2][1]"));
    JobDraft again = JobDraft.of(draft.toml());
    assertEquals(draft, again);
    assertEquals(
        "0 m", again.with("slab.corners.A1[1]", Kind.TEXT, "0 m").text("slab.corners.A1[1]"));
    assertEquals("", again.with("slab.corners.A1[2]", Kind.TEXT, " ").text("slab.corners.A1[2]"));
    assertEquals(List.of("A1"), again.keys("slab.corners"));
    assertEquals(List.of(), again.without("slab.corners.A1").keys("slab"));
  }

  @Test
  void mistakeOfAnItemIsToldAtTheItem() {
    JobDraft draft =
        filledIn()
            .with("slab.corners.A1[1]", Kind.TEXT, "0 m")
            .with("slab.corners.A1[2]", Kind.TEXT, "wide");
    assertTrue(
        draft.check().atEntries().getOrDefault("slab.corners.A1[2]", "").contains("wide"),
        draft.check()::toString);
  }

  @Test
  void entryIsRaisedAndTheFirstStaysWhereItIs() {
    JobDraft draft =
        filledIn()
            .with("points.slab", Kind.TEXT, "1 mm")
            .with("points.base", Kind.TEXT, "2 mm")
            .with("points.eave", Kind.TEXT, "3 mm");
    assertEquals(List.of("slab", "eave", "base"), draft.raised("points", "eave").keys("points"));
    assertEquals(draft, draft.raised("points", "slab"));
    assertEquals(draft, draft.raised("points", "apex"));
    assertEquals(draft, draft.raised("none", "apex"));
  }

  @Test
  void numbersAndTruthsAreWrittenWithoutQuotes() {
    JobDraft draft =
        filledIn()
            .with("decision.accept", Kind.NUMBER, "0,9")
            .with("meters.laser.coverage", Kind.NUMBER, "2")
            .with("stages.lift.hold_point", Kind.TRUTH, "false");
    assertTrue(draft.toml().contains("accept = 0.9\n"), draft.toml());
    assertTrue(draft.toml().contains("coverage = 2\n"), draft.toml());
    assertTrue(draft.toml().contains("hold_point = false\n"), draft.toml());
    assertTrue(
        draft.with("decision.accept", Kind.NUMBER, "most").toml().contains("accept = \"most\""));
    assertTrue(draft.blanked("job.crew").toml().contains("crew = \"\"\n"));
  }
}
