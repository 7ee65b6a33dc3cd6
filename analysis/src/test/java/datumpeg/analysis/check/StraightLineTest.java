package datumpeg.analysis.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.simulate.SimulatedSite;
import java.util.List;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class StraightLineTest {
  private static final double U = 0.001;

  private static InventedJob job() {
    return new InventedJob().meter("rule", MeasuredQuantity.OFFSET, U, 0);
  }

  private static Outcome outcome(StageFindings found, String target) {
    return found
        .outcome(StraightLine.CHECK, target)
        .orElseThrow(() -> new AssertionError(found.outcomes()));
  }

  private static InventedJob edge(double... offsetsMillimetres) {
    InventedJob job = job();
    for (int i = 0; i < offsetsMillimetres.length; i++) {
      job.read(
          "arrival",
          MeasuredQuantity.OFFSET,
          "edge.A@(" + 6 * i + ")",
          offsetsMillimetres[i] / 1e3);
    }
    return job;
  }

  /** The example of the class comment; n = 2 and 4 deviations. */
  @Test
  void aBowedEdgeIsOffItsChordByAllAndOffItsBestLineByHalf() {
    StageFindings found = edge(0, 6, 6, 0).reduced("arrival");
    Outcome chord = outcome(found, "edge.A/chord");
    assertEquals(0.006, chord.deviation(), 1e-12);
    // (0, 1, 0, 0) less 2/3 and 1/3 of the ends: u·√(1 + 4/9 + 1/9)
    assertEquals(U * Math.sqrt(14.0 / 9), chord.standardUncertainty(), 1e-12);
    Outcome best = outcome(found, "edge.A/best");
    assertEquals(0.003, best.deviation(), 1e-12);
    // 1 − leverage, and of a line at four equal steps the leverage of an inner place is 1/4 + 1/20
    assertEquals(U * Math.sqrt(0.7), best.standardUncertainty(), 1e-12);
    assertTrue(chord.aside().startsWith("A@(12) +6.0, A@(6) +6.0 mm"), chord.aside());
  }

  /** Another library's regression: Hipparchus. */
  @Test
  void deviationsFromTheBestLineAreTheResidualsOfARegression() {
    double[] read = {1.2, -3.4, 5.1, 0.7};
    SimpleRegression regression = new SimpleRegression();
    for (int i = 0; i < read.length; i++) {
      regression.addData(6 * i, read[i] / 1e3);
    }
    double greatest = 0;
    for (int i = 0; i < read.length; i++) {
      greatest = Math.max(greatest, Math.abs(read[i] / 1e3 - regression.predict(6 * i)));
    }
    assertEquals(
        greatest, outcome(edge(read).reduced("arrival"), "edge.A/best").deviation(), 1e-12);
  }

  @Test
  void whereTheStringIsHeldAndHowItRunsDoesNotCount() {
    StageFindings one = edge(1, 4, -2, 3).reduced("arrival");
    StageFindings other = edge(1 + 20, 4 + 25, -2 + 30, 3 + 35).reduced("arrival");
    for (String target : List.of("edge.A/chord", "edge.A/best")) {
      assertEquals(outcome(one, target).deviation(), outcome(other, target).deviation(), 1e-12);
      assertEquals(
          outcome(one, target).expandedUncertainty(),
          outcome(other, target).expandedUncertainty(),
          1e-12);
    }
  }

  @Test
  void whatAllReadingsOfTheRuleShareDropsOut() {
    InventedJob shared = new InventedJob().meter("rule", MeasuredQuantity.OFFSET, U, 0.05);
    for (int x = 0; x <= 18; x += 6) {
      shared.read("arrival", MeasuredQuantity.OFFSET, "edge.B@(" + x + ")", 0.030);
    }
    Outcome chord = outcome(shared.reduced("arrival"), "edge.B/chord");
    assertEquals(0, chord.deviation(), 1e-12);
    assertEquals(U * Math.sqrt(14.0 / 9), chord.standardUncertainty(), 1e-9);
  }

  @Test
  void aPlantedKinkOfAnEdgeIsFoundAndConcreteIsLeftWhereItIs() {
    Job job = job().build();
    SimulatedSite site =
        SimulatedSite.asDesigned(job.setOut())
            .withShift(point("edge.A@(6)"), new Position(0, -0.015, 0));
    InventedJob read = job().limit(StraightLine.CHECK, 0.008);
    for (String place : List.of("edge.A@(6)", "edge.A@(12)")) {
      Target target = Target.at(MeasuredQuantity.OFFSET, point(place));
      read.read("arrival", MeasuredQuantity.OFFSET, place, site.offsetMetres(target));
    }
    Outcome chord = outcome(read.reduced("arrival"), "edge.A/chord");
    assertEquals(0.015, chord.deviation(), 1e-12);
    assertTrue(chord.is(Verdict.NONCONFORMING));
    assertTrue(chord.aside().startsWith("A@(6) +15.0"), chord.aside());
    assertTrue(chord.remedy().startsWith("Concrete does not move"), chord.remedy());
  }

  @Test
  void basesOutOfARowAreOneCauseAndAreMovedWhileTheyCan() {
    StageFindings found =
        job()
            .limit(StraightLine.CHECK, 0.005)
            .limit("base-straight", 0.005)
            .read("standing", MeasuredQuantity.OFFSET, "base.A2", 0.012)
            .read("standing", MeasuredQuantity.OFFSET, "base.A3", -0.002)
            .reduced("standing");
    Outcome row = outcome(found, "base.A/chord");
    assertEquals(0.012, row.deviation(), 1e-12);
    assertTrue(row.remedy().contains("A2 +12.0"), row.remedy());
    assertTrue(row.remedy().contains("what is + inward"), row.remedy());
    assertEquals(1, found.causes().size(), found.causes().toString());
    assertTrue(found.causes().get(0).symptoms().contains("base-straight A2"));
  }

  /**
   * Three points of one side, two of them corners: from the coordinates the distances determine.
   */
  @Test
  void aSideOfTheSlabIsFoundFromItsDistancesAlone() {
    InventedJob job = new InventedJob().meter("laser", MeasuredQuantity.DISTANCE, 0.0005, 0);
    List<String> names =
        List.of("slab.A1", "slab.A4", "slab.B4", "slab.B1", "slab.@(9;0)", "slab.@(9;9)");
    List<PlanPoint> places =
        List.of(
            new PlanPoint(0, 0),
            new PlanPoint(18, 0),
            new PlanPoint(18, 9),
            new PlanPoint(0, 9),
            new PlanPoint(9, -0.012),
            new PlanPoint(9, 8.995));
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        job.read(
            "arrival",
            MeasuredQuantity.DISTANCE,
            names.get(i) + "-" + names.get(j),
            places.get(i).distanceMetres(places.get(j)));
      }
    }
    StageFindings found = job.limit(StraightLine.CHECK, 0.008).reduced("arrival");
    Outcome sideA = outcome(found, "slab.A1-A4/chord");
    assertEquals(0.012, sideA.deviation(), 1e-7);
    assertTrue(
        sideA.aside().startsWith("the slab 9 m from end 1 and 0 m from side A +12.0"),
        sideA.aside());
    assertEquals(0.008, outcome(found, "slab.A1-A4/best").deviation(), 1e-7);
    assertTrue(
        outcome(found, "slab.B1-B4/chord")
            .aside()
            .startsWith("the slab 9 m from end 1 and 9 m from side A -5.0"));
  }

  @Test
  void twoPlacesMakeNoRowAndOneInnerBaseIsToldByItself() {
    assertThrows(IllegalArgumentException.class, () -> new StraightLine(List.of()));
    assertTrue(
        job()
            .read("standing", MeasuredQuantity.OFFSET, "base.A2", 0.012)
            .reduced("standing")
            .outcome(StraightLine.CHECK, "base.A/chord")
            .isEmpty());
    assertTrue(edge(3).reduced("arrival").outcomes().isEmpty());
  }

  private static PointName point(String text) {
    return PointName.parse(text).orElseThrow();
  }
}
