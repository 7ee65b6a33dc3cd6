package datumpeg.analysis.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.check.PointEstimate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class CornerShiftTest {
  private static CornerShift of(double xVariance, double yVariance, double covariance) {
    return new CornerShift(
        "B4",
        new PlanPoint(18, 9),
        new PointEstimate(18.003, 8.996, xVariance, yVariance, covariance));
  }

  /** NIST/SEMATECH e-Handbook, 1.3.6.7.4: chi-square, 2 degrees of freedom, 0.95 is 5.991. */
  @Test
  void theEllipseHoldsNinetyFiveInAHundred() {
    assertEquals(5.991, CornerShift.ELLIPSE_COVERAGE * CornerShift.ELLIPSE_COVERAGE, 5e-4);
  }

  @Test
  void theShiftIsFoundLessDesign() {
    CornerShift shift = of(0, 0, 0);
    assertEquals(0.003, shift.alongMetres(), 1e-12);
    assertEquals(-0.004, shift.acrossMetres(), 1e-12);
    assertEquals(0.005, shift.lengthMetres(), 1e-12);
  }

  @Test
  void anEllipseWithoutCovarianceLiesAlongTheAxes() {
    CornerShift shift = of(4e-6, 1e-6, 0);
    assertEquals(2.4477 * 0.002, shift.firstHalfMetres(), 1e-7);
    assertEquals(2.4477 * 0.001, shift.secondHalfMetres(), 1e-7);
    assertEquals(0, shift.firstAxisRadians(), 1e-12);
  }

  /** Half axes squared are the eigenvalues of ((5, 3), (3, 5)): 8 and 2, at 45 degrees. */
  @Test
  void covarianceTurnsTheEllipse() {
    CornerShift shift = of(5e-6, 5e-6, 3e-6);
    assertEquals(2.4477 * Math.sqrt(8e-6), shift.firstHalfMetres(), 1e-6);
    assertEquals(2.4477 * Math.sqrt(2e-6), shift.secondHalfMetres(), 1e-6);
    assertEquals(Math.PI / 4, shift.firstAxisRadians(), 1e-12);
  }

  @Test
  void aSlabDrawnElsewhereIsLaidAlongSideA() {
    Map<String, PlanPoint> turned = new LinkedHashMap<>();
    turned.put("A1", new PlanPoint(10, 20));
    turned.put("A2", new PlanPoint(10, 24));
    turned.put("B2", new PlanPoint(7, 24));
    SlabShape shape = SlabShape.of(turned);
    assertEquals(new PlanPoint(0, 0), shape.corners().get("A1"));
    assertEquals(new PlanPoint(4, 0), shape.corners().get("A2"));
    assertEquals(new PlanPoint(4, 3), shape.corners().get("B2"));
  }
}
