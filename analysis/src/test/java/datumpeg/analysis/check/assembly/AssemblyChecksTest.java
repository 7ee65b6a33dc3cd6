package datumpeg.analysis.check.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.List;
import org.junit.jupiter.api.Test;

class AssemblyChecksTest {
  private static final double U = 0.00075;

  private static InventedJob job() {
    return new InventedJob().meter("laser", MeasuredQuantity.DISTANCE, U, 0);
  }

  private static Outcome outcome(StageFindings found, String check, String target) {
    return found.outcome(check, target).orElseThrow(() -> new AssertionError(found.outcomes()));
  }

  /** The wall frame of check: 18 m by 3.6 m. */
  private static InventedJob wall(
      double foot, double eave, double end1, double endN, double rising, double falling) {
    return job()
        .limit("wall-square", 0.005)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A1/foot-wall.A4/foot", foot)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A1/eave-wall.A4/eave", eave)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A1/foot-wall.A1/eave", end1)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A4/foot-wall.A4/eave", endN)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A1/foot-wall.A4/eave", rising)
        .read("assembly", MeasuredQuantity.DISTANCE, "wall.A4/foot-wall.A1/eave", falling);
  }

  /** A true parallelogram racked by r has diagonals of √((a ± r)² + h²). */
  @Test
  void rackOfAParallelogramComesFromItsDiagonals() {
    double r = 0.012;
    double h = Math.sqrt(3.6 * 3.6 - r * r);
    double rising = Math.sqrt((18 + r) * (18 + r) + h * h);
    double falling = Math.sqrt((18 - r) * (18 - r) + h * h);
    Outcome rack =
        outcome(wall(18, 18, 3.6, 3.6, rising, falling).reduced("assembly"), "wall-square", "A");
    assertEquals(r, rack.deviation(), 1e-9);
    double diagonal = Math.sqrt(18 * 18 + 3.6 * 3.6);
    assertEquals(diagonal * U * Math.sqrt(2) / 36, rack.standardUncertainty(), 1e-6);
    assertTrue(rack.is(Verdict.NONCONFORMING));
    assertTrue(rack.remedy().contains("toward end 1 by 12.0 ±"), rack.remedy());
    assertTrue(rack.remedy().contains("both diagonals read 18356.5 mm"), rack.remedy());
  }

  /**
   * Worked figures of (d1² − d2²)/(4a), computed apart: 12 m by 9 m, cosine of the corner 6.9444e-4
   * or 0.039789°, and 8 m by 6 m, 2.08333e-3 or 0.119366°; over the long sides 8.333 and 16.667 mm.
   */
  @Test
  void theRackIsThatOfTheWorkedFigures() {
    Outcome large =
        outcome(wall(12, 12, 9, 9, 15.005, 14.995).reduced("assembly"), "wall-square", "A");
    assertEquals(0.006250, Math.abs(large.deviation()), 1e-6);
    Outcome small =
        outcome(wall(8, 8, 6, 6, 10.010, 9.990).reduced("assembly"), "wall-square", "A");
    assertEquals(0.012500, Math.abs(small.deviation()), 1e-6);
    assertCorner(large, 9, 12, 6.9444e-4, 0.039789, 0.008333);
    assertCorner(small, 6, 8, 2.08333e-3, 0.119366, 0.016667);
  }

  /**
   * u(rack) = d·u·√2/(2a) of a frame planned 12 m by 9 m: 15 · 0.75 · √2 / 24 = 0.66291 mm,
   * computed apart.
   */
  @Test
  void theRackIsAsUncertainAsItsDiagonals() {
    InventedJob planned = wall(12, 12, 9, 9, 15.005, 14.995);
    planned.baysMetres = List.of(4.0, 4.0, 4.0);
    planned.columnHeightMetres = 9;
    Outcome rack = outcome(planned.reduced("assembly"), "wall-square", "A");
    assertEquals(0.00066291, rack.standardUncertainty(), 5e-9);
  }

  private static void assertCorner(
      Outcome rack, double side, double base, double cosine, double degrees, double overBase) {
    double found = Math.abs(rack.deviation()) / side;
    assertEquals(cosine, found, 5e-8);
    assertEquals(degrees, 90 - Math.toDegrees(StrictMath.acos(found)), 5e-7);
    assertEquals(overBase, base * found, 5e-7);
  }

  /** Eave 20 mm shorter, set in evenly: no rack, though a diagonal formula with one side is off. */
  @Test
  void whereOppositeSidesDifferTheAdjustedCornersDecide() {
    double half = 0.010;
    double h = 3.6;
    double side = Math.sqrt(h * h + half * half);
    double diagonal = Math.sqrt((18 - half) * (18 - half) + h * h);
    StageFindings found = wall(18, 17.98, side, side, diagonal, diagonal).reduced("assembly");
    Outcome rack = outcome(found, "wall-square", "A");
    assertEquals(0, rack.deviation(), 1e-6);
    assertTrue(rack.aside().contains("adjusted corners"), rack.aside());
  }

  @Test
  void diagonalsAloneDoNotMakeARack() {
    StageFindings found =
        job()
            .read("assembly", MeasuredQuantity.DISTANCE, "wall.A1/foot-wall.A4/eave", 18.36)
            .read("assembly", MeasuredQuantity.DISTANCE, "wall.A4/foot-wall.A1/eave", 18.35)
            .reduced("assembly");
    assertTrue(found.outcomes().isEmpty());
    assertTrue(found.notes().stream().anyMatch(note -> note.kind() == Note.Kind.UNDETERMINED));
  }

  @Test
  void footBeyondTheStringIsToldInTheAssemblyOnly() {
    InventedJob job =
        new InventedJob()
            .meter("rule", MeasuredQuantity.OFFSET, 0.001, 0)
            .limit("foot-line", 0.003)
            .read("assembly", MeasuredQuantity.OFFSET, "base.A2", 0.009)
            .read("standing", MeasuredQuantity.OFFSET, "base.A2", 0.004);
    Outcome foot = outcome(job.reduced("assembly"), "foot-line", "A2");
    assertEquals(0.009, foot.deviation(), 1e-12);
    assertTrue(foot.remedy().contains("toward the eave"), foot.remedy());
    assertEquals(0.004, outcome(job.reduced("standing"), "base-straight", "A2").deviation(), 1e-12);
    assertTrue(job.reduced("standing").outcome("foot-line", "A2").isEmpty());
  }

  /** 10 mm wider at 10 deg: the apex comes down ½·cot 10° · 10 = 28.4 mm (with the next order). */
  @Test
  void tipDistanceTellsPitchAndApex() {
    StageFindings found =
        job()
            .read("assembly", MeasuredQuantity.DISTANCE, "tip.A2-tip.B2", 8.582)
            .reduced("assembly");
    Outcome pair = outcome(found, "rafter-pair", "2");
    assertEquals(0.010, pair.deviation(), 1e-12);
    double length = 8.572 / 2 / StrictMath.cos(StrictMath.toRadians(10));
    double apex =
        Math.sqrt(length * length - 4.291 * 4.291) - Math.sqrt(length * length - 4.286 * 4.286);
    assertEquals(-0.0294, apex, 5e-4);
    assertTrue(
        pair.aside().contains("apex %.1f mm".formatted(apex * 1000).replace(',', '.')),
        pair.aside());
    assertTrue(pair.aside().contains("between the top corners"), pair.aside());
    assertTrue(pair.aside().contains("52.1 mm less"), pair.aside());
  }

  @Test
  void aReadingBetweenTheBottomCornersIsBroughtToTheTips() {
    double shortfall = 2 * 0.15 * StrictMath.sin(StrictMath.toRadians(10));
    StageFindings found =
        job()
            .read(
                "assembly",
                MeasuredQuantity.DISTANCE,
                "tip.A2/bottom-tip.B2/bottom",
                8.572 - shortfall + 0.003)
            .reduced("assembly");
    assertEquals(0.003, outcome(found, "rafter-pair", "2").deviation(), 1e-12);
  }
}
