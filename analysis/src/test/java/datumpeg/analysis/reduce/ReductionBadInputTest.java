package datumpeg.analysis.reduce;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.Opening;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Wall;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a crew may hand in, whole surveys and scraps: always an answer, or a sentence that says why.
 */
class ReductionBadInputTest {
  private static List<Note> notes(StageFindings stage, Note.Kind kind) {
    return stage.notes().stream().filter(note -> note.kind() == kind).toList();
  }

  @Test
  void withoutReadingsThereAreNoStages() {
    assertEquals(
        List.of(),
        new Reduction(new InventedJob().build(), "digest").reduce(List.of(), List.of()).stages());
  }

  @Test
  void numbersThatAreNoReadingAreRefusedWithTheirTarget() {
    for (double bad : new double[] {0, -3, Double.NaN, Double.POSITIVE_INFINITY}) {
      InventedJob job = new InventedJob();
      IllegalArgumentException refused =
          assertThrows(
              IllegalArgumentException.class,
              () -> job.read("arrival", DISTANCE, "slab.A1-slab.A4", bad));
      assertTrue(
          String.valueOf(refused.getMessage()).contains("slab.A1-slab.A4"), refused.getMessage());
    }
    for (double degrees : new double[] {90, -90, 180}) {
      InventedJob job = new InventedJob();
      double tilt = StrictMath.toRadians(degrees);
      assertThrows(
          IllegalArgumentException.class, () -> job.read("lift", TILT, "column.A1/along", tilt));
    }
  }

  @Test
  void tiltsNearlyFlatStillEndInAnAnswer() {
    StageFindings lift =
        new InventedJob()
            .limit("column-plumb", 0.007)
            .read("lift", TILT, "column.A1/along", StrictMath.toRadians(89.9))
            .reduced("lift");
    Outcome lean = lift.outcome("column-plumb", "A1/along").orElseThrow();
    assertTrue(lean.deviation() > 1);
    assertEquals(
        "Find out first whether the tilt of column A1 along the building was read right: it does not"
            + " fit the others. See that the meter sits clean, read both faces again, and void the"
            + " wrong one. If it still is so then: Stop: no prop takes up such a lean. Ask the"
            + " engineer.",
        lean.remedy());
    assertEquals(
        "Nothing that stands leans as far as the tilt of column A1 along the building reads, 89.90"
            + " deg. If the meter counts from level, it is 0.10 deg off plumb. Nothing was dropped;"
            + " read it again and void the wrong one.",
        notes(lift, Note.Kind.SLIP_SUSPECTED).get(0).text());
    assertEquals(
        "In doubt: column plumb, A1, along: read as leaning by more than a column is high, as"
            + " nothing that stands does.",
        lift.causes().get(0).sentence());
    assertFalse(lift.answer().sentence().contains(" mm"), lift.answer().sentence());
  }

  /** A level meter held on a post the other way round: 88.5 deg for 1.5 deg. */
  @Test
  void aPostThatLeansTooFarIsDoubtedToo() {
    InventedJob job = new InventedJob();
    job.openings = List.of(new Opening("D1", Wall.END_1, 2.5, 2.88, 3));
    StageFindings found =
        job.read("tightening", TILT, "opening.D1/left/along", StrictMath.toRadians(-88.5))
            .reduced("tightening");
    String text = notes(found, Note.Kind.SLIP_SUSPECTED).get(0).text();
    assertTrue(
        text.startsWith(
            "Nothing that stands leans as far as the tilt of the left post of opening D1 along the"
                + " building reads, 88.50 deg. If the meter counts from level, it is 1.50 deg off"),
        text);
  }

  /** The lean is known either way, so the list asks for neither any more. */
  @Test
  void aPlumbLineReadAtBothEndsStandsForTheTilt() {
    InventedJob job =
        new InventedJob()
            .read("lift", PLUMB_OFFSET, "base.A2/across", 0.1)
            .read("lift", PLUMB_OFFSET, "eave.A2/across", 0.1)
            .read("lift", PLUMB_OFFSET, "eave.A3/across", 0.1);
    String missing = notes(job.reduced("lift"), Note.Kind.NOT_MEASURED).get(0).text();
    assertFalse(missing.contains("column A2 across"), missing);
    String across =
        missing.replaceFirst(".*the tilts across the building of columns ([^;]*).*", "$1");
    assertEquals("A1, A3, A4, B4, B3, B2, B1", across);
    assertTrue(
        notes(job.reduced("lift"), Note.Kind.UNDETERMINED)
            .get(0)
            .text()
            .startsWith("The plumb line at column A3 was read at the eave only"));
  }

  @Test
  void metersThatTheJobDoesNotDescribeAreNamedOrSaidToHaveNoName() {
    List<Note> assumed =
        notes(
            new InventedJob().read("arrival", HEIGHT, "slab.A1", 0).reduced("arrival"),
            Note.Kind.ASSUMED);
    assertEquals(
        "Some readings name no meter: they are taken to be within ±3 mm (k = 2).",
        assumed.get(0).text());
    assertEquals(
        "The job does not describe meter clino: it is taken to be within ±0.2 deg (k = 2).",
        Meter.assumption("clino", TILT));
  }

  @Test
  void oneDistanceIsAValueAndSaysWhatIsMissing() {
    StageFindings arrival =
        new InventedJob()
            .limit("slab-size", 0.01)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18.002)
            .reduced("arrival");
    assertEquals(0.002, arrival.outcome("slab-size", "A1-A4").orElseThrow().deviation(), 1e-12);
    assertFalse(notes(arrival, Note.Kind.NOT_MEASURED).isEmpty());
    String next = notes(arrival, Note.Kind.NEXT_MEASUREMENT).get(0).text();
    assertTrue(
        next.endsWith("Measure the distance from slab corner A1 to slab corner A4 once more."),
        next);
  }

  @Test
  void oneLevelAloneHasNoSpread() {
    StageFindings arrival =
        new InventedJob()
            .limit("slab-level", 0.01)
            .read("arrival", HEIGHT, "slab.A1", -1.5)
            .reduced("arrival");
    assertTrue(arrival.outcomes().stream().noneMatch(o -> o.check().equals("slab-level")));
  }

  @Test
  void levelsAllEqualAreFlat() {
    InventedJob job = new InventedJob().limit("slab-level", 0.01);
    for (String corner : List.of("A1", "A4", "B4", "B1")) {
      job.read("arrival", HEIGHT, "slab." + corner, -1.5);
    }
    Outcome spread = job.reduced("arrival").outcome("slab-level", "slab").orElseThrow();
    assertEquals(0, spread.deviation(), 1e-12);
    assertTrue(spread.expandedUncertainty() > 0.001);
  }

  /** Six distances of one length have no figure; nothing is thrown and the misfit is said. */
  @Test
  void distancesAllEqualContradictEachOther() {
    InventedJob job = new InventedJob();
    for (String pair : List.of("A1-A4", "A4-B4", "B1-B4", "A1-B1", "A1-B4", "A4-B1")) {
      String[] ends = pair.split("-");
      job.read("arrival", DISTANCE, "slab." + ends[0] + "-slab." + ends[1], 9);
    }
    StageFindings arrival = job.reduced("arrival");
    assertFalse(
        notes(arrival, Note.Kind.SLIP_SUSPECTED).isEmpty()
            && notes(arrival, Note.Kind.UNDETERMINED).isEmpty());
  }

  /**
   * 11 mm apart, far beyond ±1 mm: the spread is told, and the mean is not given out as if good.
   */
  @Test
  void twoReadingsOfOneTargetThatContradictAreReportedWithTheirSpread() {
    StageFindings lift =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0005, 0)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.572)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.583)
            .reduced("lift");
    List<Note> suspected = notes(lift, Note.Kind.SLIP_SUSPECTED);
    assertEquals(1, suspected.size());
    assertTrue(suspected.get(0).text().contains("11"), suspected.get(0).text());
    assertEquals(List.of("r001", "r002"), suspected.get(0).readingIds());
  }

  /**
   * Whatever the quantity, and also where a network takes the readings together: read once more far
   * off, the stage says which target it is and by how much, and its answer is to measure again.
   */
  @ParameterizedTest
  @CsvSource({
    "arrival, DISTANCE, slab.A1-slab.A4, 18.000, 18.011",
    "arrival, HEIGHT, slab.A1, -1.500, -1.489",
    "arrival, STAFF, slab.A1, 1.500, 1.511",
    "arrival, OFFSET, slab.@(9;4.5), 0.001, 0.012",
    "set-out, DISTANCE, line.A1-line.B1, 8.572, 8.583",
    "set-out, OFFSET, line.A2, 0.001, 0.012",
    "assembly, DISTANCE, tip.A2-tip.B2, 8.572, 8.583",
    "lift, TILT, column.A2/along, 0.001, 0.012",
    "lift, PLUMB_OFFSET, eave.A2/along, 0.050, 0.061",
    "tightening, HEIGHT, eave.A2, 2.000, 2.011"
  })
  void contradictionsOfAnyQuantityAreReportedWithTheirSpread(
      String stage, MeasuredQuantity quantity, String target, double one, double other) {
    InventedJob job = new InventedJob().meter("meter", quantity, 0.0005, 0);
    around(job, stage, quantity, target);
    job.read(stage, quantity, target, one).read(stage, quantity, target, other);
    StageFindings found = job.reduced(stage);
    List<Note> suspected = notes(found, Note.Kind.SLIP_SUSPECTED);
    assertFalse(suspected.isEmpty(), found.toString());
    String words = TargetWords.of(Target.parse(quantity, target));
    assertTrue(suspected.get(0).text().contains(words), suspected.toString());
    assertTrue(
        suspected.get(0).text().contains("11") || suspected.get(0).text().contains("0.63"),
        suspected.toString());
    assertEquals(Answer.Kind.MEASURE_AGAIN, found.answer().kind());
  }

  /** Leans of +0.5 and −0.3 deg by a meter that has next to no zero error: 0.8 deg apart. */
  @Test
  void facesThatContradictAreComparedAsLeans() {
    InventedJob job = new InventedJob().meter("meter", TILT, 0.0005, 0.0001);
    job.read("lift", TILT, "column.A2/along", StrictMath.toRadians(0.5), 1, 1)
        .read("lift", TILT, "column.A2/along", StrictMath.toRadians(0.3), 2, 1);
    String text = notes(job.reduced("lift"), Note.Kind.SLIP_SUSPECTED).get(0).text();
    assertTrue(
        text.startsWith(
            "The readings of the tilt of column A2 along the building contradict each other by 0.800"
                + " deg, face 2 with its sign turned, more"),
        text);
  }

  /** What a network needs besides, so that it has a value for the target at all. */
  private static void around(
      InventedJob job, String stage, MeasuredQuantity quantity, String target) {
    if (target.startsWith("slab.A1-")) {
      double diagonal = Math.sqrt(18 * 18 + 81);
      job.read(stage, quantity, "slab.A4-slab.B4", 9)
          .read(stage, quantity, "slab.B4-slab.B1", 18)
          .read(stage, quantity, "slab.B1-slab.A1", 9)
          .read(stage, quantity, "slab.A1-slab.B4", diagonal)
          .read(stage, quantity, "slab.A4-slab.B1", diagonal);
    } else if (target.equals("slab.A1")) {
      job.read(stage, quantity, "slab.A4", quantity == HEIGHT ? -1.5 : 1.5);
    } else if (target.equals("eave.A2")) {
      job.read(stage, quantity, "eave.A1", 2);
    } else if (target.startsWith("eave.")) {
      job.read(stage, quantity, "base.A2/along", 0.05);
    }
  }

  /**
   * Values without verdicts in every check (an edge distance of the plan is a limit), and none
   * pretends to conform.
   */
  @Test
  void aJobWithoutLimitsHasValuesWithoutVerdicts() {
    Job job = SimulatedSurvey.job();
    SetOut plan = job.setOut();
    Details details = plan.details();
    Job unlimited =
        new Job(
            job.identity(),
            new SetOut(
                plan.building(),
                plan.slab(),
                plan.openings(),
                new Details(
                    details.mullions(), Optional.empty(), details.gutters(), details.flatness())),
            Map.of(),
            job.meters(),
            job.pointDefinitionsMetres(),
            job.decision(),
            job.stages());
    Findings findings =
        new Reduction(unlimited, "digest")
            .reduce(SimulatedSurvey.draw(job, 3).readings(), List.of());
    for (StageFindings stage : findings.stages()) {
      assertFalse(stage.outcomes().isEmpty());
      for (Outcome outcome : stage.outcomes()) {
        assertTrue(outcome.verdict().isEmpty(), outcome.check());
        assertTrue(outcome.probability().isEmpty(), outcome.check());
      }
    }
  }

  /** Whatever meter is missing from the job, what was assumed of it is said. */
  @Test
  void metersTheJobDoesNotDescribeAreAssumedAndSaid() {
    Job job = SimulatedSurvey.job();
    Job bare =
        new Job(
            job.identity(),
            job.setOut(),
            job.tolerances(),
            Map.of(),
            Map.of(),
            job.decision(),
            job.stages());
    List<Reading> readings =
        SimulatedSurvey.draw(job, 4).readings().stream()
            .filter(reading -> reading.stage().equals("survey"))
            .toList();
    StageFindings survey =
        new Reduction(bare, "digest").reduce(readings, List.of()).stage("survey").orElseThrow();
    List<String> assumed = notes(survey, Note.Kind.ASSUMED).stream().map(Note::text).toList();
    for (String meter : List.of("laser", "level", "tilt")) {
      assertTrue(assumed.stream().anyMatch(text -> text.contains(meter)), assumed.toString());
    }
    assertFalse(survey.outcomes().isEmpty());
  }

  @Test
  void aStageTheJobDoesNotHaveIsNamed() {
    InventedJob job = new InventedJob().read("painting", MeasuredQuantity.HEIGHT, "slab.A1", 1);
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Reduction(job.build(), "digest").reduce(job.readings(), List.of()));
    assertTrue(String.valueOf(refused.getMessage()).contains("painting"), refused.getMessage());
  }
}
