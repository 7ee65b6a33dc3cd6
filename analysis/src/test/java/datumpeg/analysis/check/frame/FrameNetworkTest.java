package datumpeg.analysis.check.frame;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Frames 6 m apart, columns 3.6 m high, invented. */
class FrameNetworkTest {
  private static double tilt(double leanMetres) {
    return StrictMath.atan(leanMetres / 3.6);
  }

  private static InventedJob job() {
    return new InventedJob()
        .meter("laser", DISTANCE, 0.001, 0)
        .meter("level", TILT, 0.001 / 3.6, 0.002);
  }

  /**
   * Worked: feet 6.000 m apart, leans +4 and +10 mm: 6.006 m at the eaves. u² = 1² + 1² + 1², the
   * tilt meter's zero being the same in both leans.
   */
  @Test
  void theSpacingAtTheEavesFollowsWithoutALadder() {
    StageFindings found =
        job()
            .limit("frame-spacing", 0.010)
            .limit("spacing-match", 0.012)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", TILT, "column.A2/along", tilt(0.004))
            .read("lift", TILT, "column.A3/along", tilt(0.010))
            .reduced("lift");
    Outcome eave = found.outcome("frame-spacing", "A2-A3/eave").orElseThrow();
    assertEquals(0.006, eave.deviation(), 1e-7);
    assertEquals(0.001 * Math.sqrt(3), eave.standardUncertainty(), 1e-7);
    assertEquals(List.of("r001", "r002", "r003"), eave.readingIds());
    assertEquals(Verdict.CONFORMING, eave.verdict().orElseThrow());
    assertTrue(eave.aside().contains("not read at height"), eave.aside());
    assertEquals(0.006, found.outcome("spacing-match", "A2-A3").orElseThrow().deviation(), 1e-7);
    assertTrue(found.notes().stream().noneMatch(n -> n.kind() == Note.Kind.NEXT_MEASUREMENT));
  }

  @Test
  void aReadingAtHeightIsAskedForOnlyWhereWhatFollowsIsUndecided() {
    StageFindings found =
        job()
            .limit("frame-spacing", 0.007)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", DISTANCE, "base.A3-base.A4", 5.968)
            .read("lift", TILT, "column.A2/along", tilt(0.004))
            .read("lift", TILT, "column.A3/along", tilt(0.010))
            .read("lift", TILT, "column.A4/along", tilt(0.010))
            .reduced("lift");
    Note note =
        found.notes().stream()
            .filter(n -> n.kind() == Note.Kind.NEXT_MEASUREMENT)
            .findFirst()
            .orElseThrow();
    assertTrue(
        note.text().contains("from column A2 at the eave to column A3 at the eave"), note.text());
    assertFalse(note.text().contains("column A4"), note.text());
    assertTrue(note.text().contains("platform"), note.text());
  }

  /** Leans +12 and −12 mm close the loop of feet and eaves; one with the wrong sign opens 24 mm. */
  @Test
  void aLeanWithTheWrongSignShowsAsAMisclosure() {
    StageFindings right = loop(-0.012);
    assertTrue(right.notes().stream().noneMatch(n -> n.kind() == Note.Kind.SLIP_SUSPECTED));
    StageFindings wrong = loop(0.012);
    Note slip =
        wrong.notes().stream()
            .filter(n -> n.kind() == Note.Kind.SLIP_SUSPECTED)
            .findFirst()
            .orElseThrow();
    assertTrue(slip.text().contains("the frames"), slip.text());
    assertTrue(
        slip.text().contains("the tilt of column A3 along the building reads 0.382 deg too much"),
        slip.text());
    Outcome lean = wrong.outcome("column-plumb", "A3/along").orElseThrow();
    assertEquals(0.012, lean.deviation(), 1e-6, "as observed while nothing agrees");
    assertEquals("in doubt: readings it follows from contradict each other", lean.aside());
    assertEquals("", wrong.outcome("column-plumb", "A2/along").orElseThrow().aside());
  }

  private static StageFindings loop(double leanOfA3) {
    return job()
        .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
        .read("lift", DISTANCE, "base.A3-base.A4", 5.968)
        .read("lift", DISTANCE, "eave.A2-eave.A3", 5.976)
        .read("lift", DISTANCE, "eave.A3-eave.A4", 5.980)
        .read("lift", TILT, "column.A2/along", tilt(0.012))
        .read("lift", TILT, "column.A3/along", tilt(leanOfA3))
        .read("lift", TILT, "column.A4/along", tilt(0.000))
        .reduced("lift");
  }

  /** Across: feet 8.572 apart, leans +6 (A) and −6 mm (B), eaves 3 mm longer than that makes. */
  @Test
  void aLeanIsDecidedAsAdjustedAndToldAsObservedWhereOthersCheckIt() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .meter("level", TILT, 0.001 / 3.6, 0)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.572)
            .read("lift", DISTANCE, "eave.A2-eave.B2", 8.563)
            .read("lift", TILT, "column.A2/across", tilt(0.006))
            .read("lift", TILT, "column.B2/across", tilt(-0.006))
            .reduced("lift");
    Outcome lean = found.outcome("column-plumb", "A2/across").orElseThrow();
    // misclosure 8.572 m - 12 mm - 8.563 m = -3 mm over four readings of equal weight: 0.75 mm each
    assertEquals(0.00525, lean.deviation(), 1e-6);
    assertEquals(0.001 * Math.sqrt(0.75), lean.standardUncertainty(), 1e-6);
    assertTrue(lean.aside().contains("as observed +6.0 mm"), lean.aside());
    Outcome span = found.outcome("clear-span", "2/eave").orElseThrow();
    assertEquals(8.56225, span.measured(), 1e-6);
    assertEquals(1, found.networks().get(0).degreesOfFreedom());
    assertEquals(
        0.006, found.networks().get(0).readings().get(2).observedMetres(), 1e-6, "tilts as leans");
  }

  /**
   * A plumb line counts as a lean too; one read at its foot only says nothing and breaks nothing.
   */
  @Test
  void aPlumbLineGivesALeanToTheFrames() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .meter("tape", PLUMB_OFFSET, 0.001, 0)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", PLUMB_OFFSET, "base.A2/along", 0.050)
            .read("lift", PLUMB_OFFSET, "eave.A2/along", 0.055)
            .read("lift", PLUMB_OFFSET, "base.A3/along", 0.050)
            .read("lift", PLUMB_OFFSET, "eave.A3/along", 0.047)
            .read("lift", PLUMB_OFFSET, "base.A1/along", 0.050)
            .reduced("lift");
    Outcome eave = found.outcome("frame-spacing", "A2-A3/eave").orElseThrow();
    assertEquals(-0.008, eave.deviation(), 1e-9);
    assertEquals(0.001 * Math.sqrt(5), eave.standardUncertainty(), 1e-9);
  }

  /** Read before the column was moved: stale by itself, and no part of what follows for others. */
  @Test
  void whatWasReadBeforeAMoveTakesNoPart() {
    InventedJob job =
        job()
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", TILT, "column.A2/along", tilt(0.004))
            .read("lift", TILT, "column.A3/along", tilt(0.010));
    StageFindings found =
        new Reduction(job.build(), "")
            .reduce(job.readings(), List.of(MovedThing.parse("eave.A3")))
            .stage("lift")
            .orElseThrow();
    assertTrue(found.outcome("frame-spacing", "A2-A3/eave").isEmpty());
    assertTrue(found.outcome("column-plumb", "A3/along").orElseThrow().stale());
    assertFalse(found.outcome("frame-spacing", "A2-A3/base").orElseThrow().stale());
  }

  /** A mark 5 mm beside its foot moves the spacing of the feet, and not the leans. */
  @Test
  void marksWidenWhatIsMeasuredBetweenThemOnce() {
    InventedJob job = job();
    job.pointDefinitionsMetres.put("base", 0.005);
    Outcome base =
        job.read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", TILT, "column.A2/along", tilt(0))
            .reduced("lift")
            .outcome("frame-spacing", "A2-A3/base")
            .orElseThrow();
    assertEquals(Math.sqrt(0.5e-6 + 2 * 25e-6), base.standardUncertainty(), 1e-9);
  }

  private static List<String> next(StageFindings found) {
    return found.notes().stream()
        .filter(note -> note.kind() == Note.Kind.NEXT_MEASUREMENT)
        .map(Note::text)
        .toList();
  }

  /** Three bays, chained: only the whole length checks them all at once. */
  @Test
  void whereNothingChecksTheFeetTheWholeRowIsTheNextDistance() {
    InventedJob job =
        job()
            .limit("frame-spacing", 0.002)
            .read("lift", DISTANCE, "base.A1-base.A2", 5.970)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.000)
            .read("lift", DISTANCE, "base.A3-base.A4", 5.968);
    List<String> next = next(job.reduced("lift"));
    assertEquals(1, next.size(), next.toString());
    assertTrue(
        next.get(0)
            .endsWith("measure the distance from the foot of column A1 to the foot of column A4."),
        next.get(0));
  }

  /** The whole row checks the bays; what helps the undecided one most is to read it again. */
  @Test
  void ofCheckedFeetTheUndecidedSpacingIsReadAgain() {
    InventedJob job =
        job()
            .limit("frame-spacing", 0.002)
            .read("lift", DISTANCE, "base.A1-base.A2", 5.968)
            .read("lift", DISTANCE, "base.A2-base.A3", 6.0019)
            .read("lift", DISTANCE, "base.A3-base.A4", 5.968)
            .read("lift", DISTANCE, "base.A1-base.A4", 17.938);
    List<String> next = next(job.reduced("lift"));
    assertEquals(1, next.size(), next.toString());
    assertTrue(
        next.get(0)
            .startsWith(
                "Next, measure the distance from the foot of column A2 to the foot of column A3: it helps"),
        next.get(0));
    assertTrue(
        next.get(0).contains("the spacing A2 to A3 at the base from ± 1.7 mm to ± 1.3 mm"),
        next.get(0));
  }
}
