package datumpeg.analysis.reduce;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.HEIGHT;
import static datumpeg.analysis.measuring.MeasuredQuantity.OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said to do about outcomes whose readings contradict each other, however they do. */
class ContradictionAdviceTest {
  private static final String FIRST = "Find out first wh";

  private static Outcome outcome(StageFindings found, String check, String target) {
    return found.outcome(check, target).orElseThrow();
  }

  private static void assertFirst(StageFindings found, String check, String target) {
    Outcome outcome = outcome(found, check, target);
    assertTrue(outcome.is(Verdict.UNDECIDED), outcome.toString());
    assertTrue(outcome.remedy().startsWith(FIRST), outcome.remedy());
    assertFalse(outcome.remedy().contains("better meter"), outcome.remedy());
    assertFalse(outcome.remedy().contains("more."), outcome.remedy());
    assertFalse(found.notes().stream().anyMatch(n -> n.kind() == Note.Kind.NEXT_MEASUREMENT));
  }

  @Test
  void repeatsOfOneDistance() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0005, 0)
            .limit("clear-span", 0.010)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.572)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.583)
            .read("lift", DISTANCE, "base.A3-base.B3", 8.5818)
            .reduced("lift");
    assertFirst(found, "clear-span", "2/base");
    assertEquals(
        "Find out first which reading is right: those of the distance from the foot of column A2 to"
            + " the foot of column B2 contradict each other. Check the points, read again, and void"
            + " the wrong one.",
        outcome(found, "clear-span", "2/base").remedy());
    Outcome other = outcome(found, "clear-span", "3/base");
    assertTrue(other.is(Verdict.UNDECIDED), other.toString());
    assertFalse(other.remedy().contains(FIRST), other.remedy());
  }

  /** A side read twice among five that fit the first. */
  @Test
  void repeatsInANetwork() {
    double right = Math.sqrt(18 * 18 + 81);
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0005, 0)
            .limit("slab-size", 0.005)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18.011)
            .read("arrival", DISTANCE, "slab.A4-slab.B4", 9)
            .read("arrival", DISTANCE, "slab.B4-slab.B1", 18)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .read("arrival", DISTANCE, "slab.A1-slab.B4", right)
            .read("arrival", DISTANCE, "slab.A4-slab.B1", right)
            .reduced("arrival");
    assertFirst(found, "slab-size", "A1-A4");
  }

  /** Nothing was read twice, and no single reading stands out: a diagonal 15 mm too long. */
  @Test
  void distancesThatDoNotFitTogether() {
    double right = Math.sqrt(18 * 18 + 81);
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0015, 0)
            .limit("slab-size", 0.004)
            .limit("slab-square", 0.012)
            .read("arrival", DISTANCE, "slab.A1-slab.A4", 18)
            .read("arrival", DISTANCE, "slab.A4-slab.B4", 9)
            .read("arrival", DISTANCE, "slab.B4-slab.B1", 18)
            .read("arrival", DISTANCE, "slab.B1-slab.A1", 9)
            .read("arrival", DISTANCE, "slab.A1-slab.B4", right + 0.015)
            .read("arrival", DISTANCE, "slab.A4-slab.B1", right)
            .reduced("arrival");
    assertFirst(found, "slab-size", "A1-A4");
    assertEquals(
        outcome(found, "slab-size", "A1-A4").remedy(),
        found.causes().get(found.causes().size() - 1).action());
  }

  /** Frames bent beyond 0.1 %: a bay too long by 12 mm against the row read at once. */
  @Test
  void framesThatDoNotFitTogether() {
    InventedJob job =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0)
            .meter("clino", TILT, 0.0003, 0)
            .limit("frame-spacing", 0.010)
            .limit("column-plumb", 0.0005)
            .limit("overall-length", 0.003);
    job.read("lift", DISTANCE, "base.A1-base.A2", 5.968 + 0.012)
        .read("lift", DISTANCE, "base.A2-base.A3", 6)
        .read("lift", DISTANCE, "base.A3-base.A4", 5.968)
        .read("lift", DISTANCE, "base.A1-base.A4", 17.936)
        .read("lift", TILT, "column.B4/across", 0);
    StageFindings found = job.reduced("lift");
    assertFirst(found, "frame-spacing", "A1-A2/base");
    assertFirst(found, "overall-length", "A");
    Outcome beside = outcome(found, "column-plumb", "B4/across");
    assertTrue(beside.is(Verdict.UNDECIDED), beside.toString());
    assertFalse(beside.remedy().contains(FIRST), beside.remedy());
  }

  /** A spacing at the eave that nobody read has a remedy of its own: to climb for it. */
  @Test
  void whatFollowsFromFeetThatContradictIsNotReadAtHeightFirst() {
    InventedJob job =
        new InventedJob()
            .meter("laser", DISTANCE, 0.002, 0)
            .meter("clino", TILT, 0.0005, 0)
            .limit("frame-spacing", 0.004);
    job.read("lift", DISTANCE, "base.A1-base.A2", 5.968)
        .read("lift", DISTANCE, "base.A1-base.A2", 5.9755)
        .read("lift", TILT, "column.A1/along", 0)
        .read("lift", TILT, "column.A2/along", 0);
    StageFindings found = job.reduced("lift");
    assertFirst(found, "frame-spacing", "A1-A2/eave");
    assertFirst(found, "frame-spacing", "A1-A2/base");
  }

  /** +1° and +1° on two faces: a zero error of 1° or a face read twice. */
  @Test
  void facesOfATilt() {
    double degree = StrictMath.toRadians(1);
    StageFindings found =
        new InventedJob()
            .meter("clino", TILT, 0.0005, 0.001)
            .limit("column-plumb", 0.010)
            .read("lift", TILT, "column.A2/across", degree, 1, 1)
            .read("lift", TILT, "column.A2/across", degree, 2, 1)
            .reduced("lift");
    assertFirst(found, "column-plumb", "A2/across");
    assertTrue(
        outcome(found, "column-plumb", "A2/across").remedy().contains("read both faces again"),
        outcome(found, "column-plumb", "A2/across").remedy());
  }

  /**
   * Column A2 on two faces tells the zero error for A3, which was read on one. +2 mrad on both are
   * a zero error of 2 mrad, where 0.4 mrad are stated and one reading has 0.2 mrad: taken as 2 ·
   * 0.4²/(0.4² + 0.2²/2) = 1.778 mrad, which moves A3 by 3.6 m · 1.778 mrad = 6.4 mm. Without
   * either face nothing moves it.
   */
  @Test
  void aFaceThatMovesTheZeroErrorOfOthersReachesThem() {
    InventedJob job =
        new InventedJob()
            .meter("clino", TILT, 0.0002, 0.0004)
            .limit("column-plumb", 0.005)
            .limit("portal-plumb", 0.005)
            .read("lift", TILT, "column.A2/across", 0.002, 1, 1)
            .read("lift", TILT, "column.A2/across", 0.002, 2, 1)
            .read("lift", TILT, "column.A3/across", 0.0025, 1, 1)
            .read("lift", TILT, "column.B3/across", 0.0025, 1, 1);
    StageFindings found = job.reduced("lift");
    Outcome other = outcome(found, "column-plumb", "A3/across");
    assertTrue(
        other.aside().contains("U holds 6.4 mm for readings that contradict each other"),
        other.aside());
    assertTrue(other.remedy().contains("column A2 across the building"), other.remedy());
    assertFirst(found, "column-plumb", "A3/across");
    double alone =
        new InventedJob()
            .meter("clino", TILT, 0.0002, 0.0004)
            .read("lift", TILT, "column.A3/across", 0.0025, 1, 1)
            .reduced("lift")
            .outcome("column-plumb", "A3/across")
            .orElseThrow()
            .deviation();
    assertTrue(Math.abs(alone - other.deviation()) < other.expandedUncertainty(), "" + alone);
    assertTrue(
        outcome(found, "portal-plumb", "3/across").aside().contains("contradict each other"));
  }

  /** Tilt meter and plumb line 20 mm apart: the tilt decides, but not that it is decided. */
  @Test
  void aTiltAgainstAPlumbLine() {
    StageFindings found =
        new InventedJob()
            .meter("clino", TILT, 0.0005, 0)
            .meter("rule", PLUMB_OFFSET, 0.0005, 0)
            .limit("column-plumb", 0.010)
            .read("lift", TILT, "column.A2/across", 0.010 / 3.6)
            .read("lift", PLUMB_OFFSET, "base.A2/across", 0.1)
            .read("lift", PLUMB_OFFSET, "eave.A2/across", 0.13)
            .reduced("lift");
    assertFirst(found, "column-plumb", "A2/across");
  }

  @Test
  void levelsAndGaps() {
    InventedJob job = new InventedJob().meter("level", HEIGHT, 0.0005, 0);
    job.meter("rule", OFFSET, 0.0005, 0).limit("slab-level", 0.010).limit("slab-flatness", 0.010);
    job.read("arrival", HEIGHT, "slab.A1", 0)
        .read("arrival", HEIGHT, "slab.A1", 0.011)
        .read("arrival", HEIGHT, "slab.A4", 0)
        .read("arrival", HEIGHT, "slab.B4", 0)
        .read("arrival", OFFSET, "slab.@(3;3)", 0.001)
        .read("arrival", OFFSET, "slab.@(3;3)", 0.012)
        .read("arrival", OFFSET, "slab.@(9;3)", 0.001);
    StageFindings found = job.reduced("arrival");
    assertFirst(found, "slab-level", "slab");
    assertFirst(found, "slab-flatness", "straightedge");
    assertTrue(
        outcome(found, "slab-flatness", "straightedge").remedy().contains("3 m from end 1"),
        outcome(found, "slab-flatness", "straightedge").remedy());
  }

  /** Surely out, whichever reading is right: nothing is moved before that is known all the same. */
  @Test
  void nothingIsMovedForAReadingInDoubt() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.0005, 0)
            .limit("clear-span", 0.010)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.632)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.643)
            .reduced("lift");
    Outcome span = outcome(found, "clear-span", "2/base");
    assertTrue(span.is(Verdict.NONCONFORMING), span.toString());
    assertTrue(span.remedy().startsWith(FIRST), span.remedy());
    assertTrue(span.remedy().contains(" If it still is so then: "), span.remedy());
    assertEquals(span.remedy(), found.causes().get(0).action());
    assertEquals(
        "Stop. In doubt: the clear span of frame 2 at the base is 65.5 ± 11.0 mm too wide.",
        found.answer().sentence());
  }

  /** Without a contradiction everything is advised as before. */
  @Test
  void readingsThatAgreeAreAdvisedAsBefore() {
    StageFindings found =
        new InventedJob()
            .meter("laser", DISTANCE, 0.004, 0)
            .limit("clear-span", 0.010)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.579)
            .read("lift", DISTANCE, "base.A2-base.B2", 8.581)
            .reduced("lift");
    Outcome span = outcome(found, "clear-span", "2/base");
    assertTrue(span.is(Verdict.UNDECIDED), span.toString());
    assertEquals(
        List.of(), found.notes().stream().filter(ContradictionAdviceTest::isSlip).toList());
    assertFalse(span.remedy().contains(FIRST), span.remedy());
  }

  private static boolean isSlip(Note note) {
    return note.kind() == Note.Kind.SLIP_SUSPECTED;
  }
}
