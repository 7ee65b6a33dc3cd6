package datumpeg.analysis.check.slab;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.remedy.LinePlacement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Slabs poured beside the plan of 12 by 9 m; every distance between corners is read. */
class LinesOnSlabTest {

  private static InventedJob poured(Map<String, PlanPoint> corners) {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.001, 0);
    job.baysMetres = List.of(6.0, 6.0);
    List<String> names = List.copyOf(corners.keySet());
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        job.read(
            "arrival",
            DISTANCE,
            "slab." + names.get(j) + "-slab." + names.get(i),
            place(corners, names.get(i)).distanceMetres(place(corners, names.get(j))));
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

  /** Out of square by 14 mm over 9 m: turned, the lines lose less than half of that. */
  @Test
  void aSlabOutOfSquareLosesLessThanItsRack() {
    Map<String, PlanPoint> corners = rectangle(12, 9);
    corners.put("B3", new PlanPoint(12.014, 9));
    corners.put("B1", new PlanPoint(0.014, 9));
    LinePlacement lines = poured(corners).reduced("arrival").placement().orElseThrow();
    assertTrue(lines.shortMetres() > 0.003 && lines.shortMetres() <= 0.007, lines.sentence());
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
