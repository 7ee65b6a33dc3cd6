package datumpeg.analysis.check.frame;

import static datumpeg.analysis.measuring.MeasuredQuantity.PLUMB_OFFSET;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import org.junit.jupiter.api.Test;

class ColumnPlumbTest {
  private static final double DEGREE = StrictMath.PI / 180;

  /**
   * Reversal, worked: +0.32° and −0.18° give θ = 0.25° and a zero error of 0.07°, and over 4200 mm
   * an offset of 4200·tan 0.25° = 18.326 mm (computed). u(θ) = u/√2.
   */
  @Test
  void twoFacesCancelTheZeroError() {
    InventedJob job = new InventedJob().meter("level", TILT, 0.025 * DEGREE, 0.1 * DEGREE);
    job.columnHeightMetres = 4.2;
    Outcome lean =
        job.read("lift", TILT, "column.A2/across", 0.32 * DEGREE, 1, 1)
            .read("lift", TILT, "column.A2/across", -0.18 * DEGREE, 2, 1)
            .reduced("lift")
            .outcome("column-plumb", "A2/across")
            .orElseThrow();
    assertEquals(0.018326, lean.deviation(), 5e-7);
    double u = 0.025 * DEGREE / Math.sqrt(2) * 4.2;
    assertEquals(2 * u, lean.expandedUncertainty(), 2e-4 * u);
  }

  @Test
  void columnsOnTwoFacesCalibrateThoseOnOne() {
    InventedJob job = new InventedJob().meter("level", TILT, 0.005 * DEGREE, 0.1 * DEGREE);
    for (String column : List.of("A1", "A2", "A3")) {
      job.read("lift", TILT, "column." + column + "/across", 0.07 * DEGREE, 1, 1)
          .read("lift", TILT, "column." + column + "/across", 0.07 * DEGREE, 2, 1);
    }
    Outcome oneFace =
        job.read("lift", TILT, "column.A4/across", 0.07 * DEGREE, 1, 1)
            .reduced("lift")
            .outcome("column-plumb", "A4/across")
            .orElseThrow();
    assertEquals(0, oneFace.deviation(), 2e-5);
    assertTrue(oneFace.standardUncertainty() < 3.6 * 0.01 * DEGREE);
  }

  /** The bow of a column adds 4·s·|1 − 2z/H|/√3 to a tilt read away from mid-height. */
  @Test
  void readingNearTheFootIsLessCertainOfTheTop() {
    InventedJob job = new InventedJob().meter("level", TILT, 1e-6, 0);
    job.read("lift", TILT, "column.A2/across", 0);
    datumpeg.analysis.measuring.Reading low = job.readings().get(0);
    datumpeg.analysis.measuring.Reading atFoot =
        new datumpeg.analysis.measuring.Reading(
            low.id(),
            low.stage(),
            low.target(),
            0,
            0,
            low.meter(),
            low.session(),
            "",
            java.util.OptionalDouble.of(0.9),
            1,
            low.at(),
            "",
            "");
    Outcome lean =
        new Reduction(job.build(), "")
            .reduce(List.of(atFoot), List.of())
            .stage("lift")
            .orElseThrow()
            .outcome("column-plumb", "A2/across")
            .orElseThrow();
    double expected = 4 * 0.0036 * 0.5 / Math.sqrt(3);
    assertEquals(expected, lean.standardUncertainty(), 1e-6);
  }

  /**
   * Individual against mean inclination (the two rules of EN 1090-2 for portal frames, from
   * memory): 6 m columns at +18 and −16 mm pass h/300 each and h/500 on the mean of 1 mm; at +18
   * and +16 mm the mean of 17 mm fails though each passes.
   */
  @Test
  void thePortalsMeanIsSigned() {
    assertEquals(0.001, mean(0.018, -0.016).deviation(), 1e-9);
    assertTrue(mean(0.018, -0.016).is(Verdict.CONFORMING));
    assertEquals(0.017, mean(0.018, 0.016).deviation(), 1e-9);
    assertTrue(mean(0.018, 0.016).is(Verdict.NONCONFORMING));
    assertTrue(mean(0.018, -0.016).aside().contains("B − A -34.0 ± "), mean(0.018, -0.016).aside());
  }

  private static Outcome mean(double leanA, double leanB) {
    InventedJob job = new InventedJob().meter("level", TILT, 1e-5, 0).limit("portal-plumb", 0.012);
    job.columnHeightMetres = 6;
    return job.read("lift", TILT, "column.A2/across", StrictMath.atan(leanA / 6))
        .read("lift", TILT, "column.B2/across", StrictMath.atan(leanB / 6))
        .reduced("lift")
        .outcome("portal-plumb", "2/across")
        .orElseThrow();
  }

  @Test
  void aZeroErrorSharedByBothColumnsDoesNotShrinkInTheirMean() {
    InventedJob job = new InventedJob().meter("level", TILT, 1e-6, 0.001);
    Outcome mean =
        job.read("lift", TILT, "column.A2/across", 0.001)
            .read("lift", TILT, "column.B2/across", 0.001)
            .reduced("lift")
            .outcome("portal-plumb", "2/across")
            .orElseThrow();
    assertEquals(3.6 * 0.001, mean.standardUncertainty(), 1e-7);
  }

  @Test
  void aPlumbLineGivesTheLeanAsEaveLessBase() {
    InventedJob job = new InventedJob().meter("tape", PLUMB_OFFSET, 0.001, 0.002);
    Outcome lean =
        job.read("lift", PLUMB_OFFSET, "base.A3/across", 0.050)
            .read("lift", PLUMB_OFFSET, "eave.A3/across", 0.057)
            .reduced("lift")
            .outcome("column-plumb", "A3/across")
            .orElseThrow();
    assertEquals(0.007, lean.deviation(), 1e-12);
    assertEquals(0.001 * Math.sqrt(2), lean.standardUncertainty(), 1e-9);
  }

  @Test
  void theRemedyNamesTheDirectionAndMillimetresWhileTheColumnCanStillMove() {
    InventedJob job = new InventedJob().meter("level", TILT, 1e-5, 0).plumbRatio(500, 0.025);
    job.read("lift", TILT, "column.A3/across", StrictMath.atan(0.021 / 3.6));
    job.read("handover", TILT, "column.A3/across", StrictMath.atan(0.021 / 3.6));
    Outcome atLift = job.reduced("lift").outcome("column-plumb", "A3/across").orElseThrow();
    assertTrue(atLift.remedy().contains("toward side A by 21.0"), atLift.remedy());
    Outcome late = job.reduced("handover").outcome("column-plumb", "A3/across").orElseThrow();
    assertTrue(late.remedy().contains("ask the engineer"), late.remedy());
  }

  @Test
  void roundsAreNotAveragedAndAMovedColumnIsStaleUntilMeasured() {
    InventedJob job = new InventedJob().meter("level", TILT, 1e-5, 0).plumbRatio(500, 0.025);
    job.read("lift", TILT, "column.A3/across", StrictMath.atan(0.021 / 3.6));
    List<MovedThing> moved = List.of(MovedThing.parse("column.A3"));
    StageFindings stale =
        new Reduction(job.build(), "").reduce(job.readings(), moved).stage("lift").orElseThrow();
    assertTrue(stale.outcome("column-plumb", "A3/across").orElseThrow().stale());
    assertEquals(Answer.Kind.MEASURE_AGAIN, stale.answer().kind());
    job.read("lift", TILT, "column.A3/across", 0, 0, 2);
    StageFindings fresh =
        new Reduction(job.build(), "").reduce(job.readings(), moved).stage("lift").orElseThrow();
    Outcome lean = fresh.outcome("column-plumb", "A3/across").orElseThrow();
    assertEquals(0, lean.deviation(), 1e-12);
    assertEquals(2, lean.round());
    assertEquals(Answer.Kind.GO_ON, fresh.answer().kind());
  }

  /**
   * H/500 = 7.2 mm, lean 6.5 mm: u = 0.7/1.645 = 0.43 mm is needed; the zero error alone is 1 mm.
   */
  @Test
  void adviceKnowsWhatRepeatsCannotShrink() {
    InventedJob scatter =
        new InventedJob().meter("level", TILT, 0.0008 / 3.6, 0).plumbRatio(500, 0.025);
    String repeat =
        scatter
            .read("lift", TILT, "column.A3/across", StrictMath.atan(0.0065 / 3.6))
            .reduced("lift")
            .outcome("column-plumb", "A3/across")
            .orElseThrow()
            .remedy();
    assertTrue(repeat.startsWith("Read it 3 times more."), repeat);
    InventedJob shared =
        new InventedJob().meter("level", TILT, 1e-5, 0.001 / 3.6).plumbRatio(500, 0.025);
    String other =
        shared
            .read("lift", TILT, "column.A3/across", StrictMath.atan(0.0065 / 3.6))
            .reduced("lift")
            .outcome("column-plumb", "A3/across")
            .orElseThrow()
            .remedy();
    assertTrue(other.startsWith("Repeats will not decide it"), other);
  }
}
