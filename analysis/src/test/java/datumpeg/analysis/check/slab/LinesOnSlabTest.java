package datumpeg.analysis.check.slab;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

/** Slabs poured beside the plan of 12 by 9 m; every distance between corners is read. */
class LinesOnSlabTest {

  private static InventedJob poured(Map<String, PlanPoint> corners) {
    return poured(corners, () -> 0);
  }

  private static InventedJob poured(Map<String, PlanPoint> corners, DoubleSupplier errors) {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.001, 0);
    job.baysMetres = List.of(6.0, 6.0);
    List<String> names = List.copyOf(corners.keySet());
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        job.read(
            "arrival",
            DISTANCE,
            "slab." + names.get(j) + "-slab." + names.get(i),
            place(corners, names.get(i)).distanceMetres(place(corners, names.get(j)))
                + errors.getAsDouble());
      }
    }
    return job;
  }

  private static PlanPoint place(Map<String, PlanPoint> corners, String name) {
    return java.util.Objects.requireNonNull(corners.get(name));
  }

  private static Map<String, PlanPoint> rectangle(double length, double span) {
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("A1", new PlanPoint(0, 0));
    corners.put("A3", new PlanPoint(length, 0));
    corners.put("B3", new PlanPoint(length, span));
    corners.put("B1", new PlanPoint(0, span));
    return corners;
  }

  private static double mark(LinePlacement lines, String line, String edge) {
    return lines.offsets().stream()
        .filter(offset -> offset.line().equals(line) && offset.edge().equals(edge))
        .findFirst()
        .orElseThrow()
        .metres();
  }

  /** By hand: 10 mm short is 5 at each end; 6 mm wide leaves 214 + 3 mm at each side. */
  @Test
  void aShortSlabIsSharedByItsEnds() {
    LinePlacement lines =
        poured(rectangle(11.990, 9.006)).reduced("arrival").placement().orElseThrow();
    assertEquals(8, lines.offsets().size());
    assertEquals(0.005, lines.shortMetres(), 1e-6);
    assertEquals(-0.005, mark(lines, "A1", "A1-B1"), 1e-6);
    assertEquals(-0.005, mark(lines, "B3", "A3-B3"), 1e-6);
    assertEquals(0.217, mark(lines, "A1", "A1-A3"), 1e-6);
    assertEquals(0.217, mark(lines, "B3", "B1-B3"), 1e-6);
    assertTrue(lines.fits(), "no limit, nothing said against it");
  }

  /**
   * Half a side's length: five sixths of the reading of a side, since the sixth distance checks the
   * other five. Held between half of one reading and one reading.
   */
  @Test
  void itsUncertaintyIsThatOfHalfASide() {
    LinePlacement lines =
        poured(rectangle(11.990, 9.006)).reduced("arrival").placement().orElseThrow();
    assertTrue(lines.standardUncertaintyMetres() > 0.0003, lines.sentence());
    assertTrue(lines.standardUncertaintyMetres() < 0.001, lines.sentence());
  }

  @Test
  void whetherTheLinesFitIsSaidFirst() {
    StageFindings found =
        poured(rectangle(11.990, 9.006)).limit("slab-size", 0.012).reduced("arrival");
    assertTrue(
        found
            .answer()
            .sentence()
            .startsWith("The lines fit on the slab: at best short of the plan"),
        found.answer().sentence());
    assertTrue(
        found
            .answer()
            .first()
            .contains("Mark the lines (mm): A1 217 from A1-A3 and 5 beyond A1-B1; "),
        found.answer().first());
  }

  /** 26 mm short in length: 13 mm at each end, where 10 are allowed. */
  @Test
  void aSlabTooShortDoesNotFit() {
    StageFindings found = poured(rectangle(11.974, 9)).limit("slab-size", 0.010).reduced("arrival");
    LinePlacement lines = found.placement().orElseThrow();
    assertFalse(lines.fits());
    assertEquals(Answer.Kind.STOP, found.answer().kind());
    assertTrue(
        found
            .answer()
            .sentence()
            .startsWith("The lines do not fit on the slab: at best short by 13.0"),
        found.answer().sentence());
  }

  /** 20.4 mm short: 10.2 at each end, where 10 are allowed and some 0.5 is what can be seen. */
  @Test
  void aSlabHardlyTooShortIsTooCloseToCall() {
    StageFindings found =
        poured(rectangle(11.9796, 9)).limit("slab-size", 0.010).reduced("arrival");
    LinePlacement lines = found.placement().orElseThrow();
    assertTrue(lines.is(Verdict.UNDECIDED), lines.sentence());
    assertTrue(
        lines.sentence().startsWith("Whether the lines fit on the slab is too close to call"),
        lines.sentence());
    assertTrue(
        found.answer().first().contains("Read the sides and diagonals"), found.answer().first());
  }

  /** Out of square by 14 mm over 9 m: turned, the lines lose less than half of that. */
  @Test
  void aSlabOutOfSquareLosesLessThanItsRack() {
    Map<String, PlanPoint> corners = rectangle(12, 9);
    corners.put("B3", new PlanPoint(12.014, 9));
    corners.put("B1", new PlanPoint(0.014, 9));
    LinePlacement lines = poured(corners).reduced("arrival").placement().orElseThrow();
    assertTrue(lines.shortMetres() > 0.003 && lines.shortMetres() <= 0.007, lines.sentence());
  }

  /**
   * Slabs some 10 mm short whose corners lie off by 6 mm, and slabs that are exact rectangles,
   * where several edges are short alike: read with 1 mm, the stated uncertainties are the scatter
   * about the place on the true slab. The limit is what is truly short, where at most one in twenty
   * may be accepted or rejected. Fixed seed; bounds of three standard deviations of the simulation.
   */
  @Test
  void whatIsStatedIsTheScatterOfSimulatedSurveys() {
    Scatter poured = new Scatter(150, 0.006);
    assertEquals(1, poured.shortRatio(), 3 / Math.sqrt(2.0 * 150));
    assertEquals(1, poured.offsetRatio(), 0.10);
    assertEquals(0.95, poured.covered(), 0.04);
    poured.assertSeldomWrong();
    Scatter rectangles = new Scatter(150, 0);
    assertEquals(1, rectangles.offsetRatio(), 0.15);
    rectangles.assertSeldomWrong();
  }

  /** Simulated surveys of slabs, and how their placements differ from those on the true slab. */
  private static final class Scatter {
    private final int runs;
    private double shortErrors;
    private double shortVariances;
    private double offsetErrors;
    private double offsetVariances;
    private int offsets;
    private int inside;
    private int accepted;
    private int rejected;

    Scatter(int runs, double cornerMetres) {
      this.runs = runs;
      NormalDraws draws = new NormalDraws(20260305L);
      for (int run = 0; run < runs; run++) {
        Map<String, PlanPoint> corners = rectangle(11.98, 8.98);
        corners.replaceAll(
            (name, place) ->
                new PlanPoint(
                    place.xMetres() + draws.next(cornerMetres),
                    place.yMetres() + draws.next(cornerMetres)));
        LinePlacement truth = poured(corners).reduced("arrival").placement().orElseThrow();
        add(
            truth,
            poured(corners, () -> draws.next(0.001))
                .limit("slab-size", truth.shortMetres())
                .reduced("arrival")
                .placement()
                .orElseThrow());
      }
    }

    private void add(LinePlacement truth, LinePlacement found) {
      shortErrors += square(found.shortMetres() - truth.shortMetres());
      shortVariances += square(found.standardUncertaintyMetres());
      accepted += found.is(Verdict.CONFORMING) ? 1 : 0;
      rejected += found.is(Verdict.NONCONFORMING) ? 1 : 0;
      for (int i = 0; i < found.offsets().size(); i++) {
        double u = found.offsets().get(i).standardUncertaintyMetres();
        double error = found.offsets().get(i).metres() - truth.offsets().get(i).metres();
        offsets++;
        offsetErrors += square(error);
        offsetVariances += square(u);
        inside += Math.abs(error) <= 2 * u ? 1 : 0;
      }
    }

    private static double square(double x) {
      return x * x;
    }

    double shortRatio() {
      return Math.sqrt(shortErrors / shortVariances);
    }

    double offsetRatio() {
      return Math.sqrt(offsetErrors / offsetVariances);
    }

    double covered() {
      return (double) inside / offsets;
    }

    void assertSeldomWrong() {
      double most = runs * 0.05 + 3 * Math.sqrt(runs * 0.05 * 0.95);
      assertTrue(accepted <= most, "accepted " + accepted);
      assertTrue(rejected <= most, "rejected " + rejected);
    }
  }

  /** An L-shaped slab: the building is held by the inner corner where it has no edge beside it. */
  @Test
  void anInnerCornerHoldsTheLinesToo() {
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("A1", new PlanPoint(0, 0));
    corners.put("A3", new PlanPoint(12, 0));
    corners.put("B3", new PlanPoint(12, 9));
    corners.put("B2", new PlanPoint(6, 9));
    corners.put("C2", new PlanPoint(6, 14));
    corners.put("C1", new PlanPoint(0, 14));
    InventedJob job = poured(corners);
    job.slabCorners = corners;
    StageFindings found = job.reduced("arrival");
    LinePlacement lines = found.placement().orElseThrow();
    assertEquals(7, lines.offsets().size(), "B1 has no edge of side B beside it");
    assertEquals(0, lines.shortMetres(), 1e-6);
    assertEquals(0.214, mark(lines, "A1", "A1-A3"), 1e-6);
  }

  @Test
  void withoutAShapeNothingIsPlaced() {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.001, 0);
    job.baysMetres = List.of(6.0, 6.0);
    job.read("arrival", DISTANCE, "slab.A1-slab.A3", 12);
    assertTrue(job.reduced("arrival").placement().isEmpty());
  }
}
