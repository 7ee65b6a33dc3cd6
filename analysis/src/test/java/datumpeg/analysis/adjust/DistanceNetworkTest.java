package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The worked quadrilateral of {@link Quadrilateral}: every figure stated there to the digits
 * computed.
 */
final class DistanceNetworkTest {
  private static final double SD = Quadrilateral.STANDARD_UNCERTAINTY;
  private final AdjustedPlan plan = Quadrilateral.adjusted(15.006);

  @Test
  void adjustsTheSixDistancesToTheWorkedValues() {
    double[] adjusted = {12.002001, 8.997250, 11.997001, 9.003251, 15.007249, 14.992248};
    double[] residualsMillimetres = {-0.9988, -0.7496, -0.9992, -0.7491, 1.2494, 1.2482};
    List<AdjustedObservation> observations = plan.fit().observations();
    for (int i = 0; i < 6; i++) {
      AdjustedObservation one = observations.get(i);
      assertEquals(adjusted[i], one.adjusted(), 1e-6, one.observation().id());
      assertEquals(residualsMillimetres[i], one.residual() * 1000, 1e-4, one.observation().id());
      MeasuredDistance taken = plan.distances().get(i);
      assertEquals(one.adjusted(), plan.distance(taken.from(), taken.to()).value(), 1e-10);
    }
  }

  @Test
  void testsTheMisclosureWithOneDegreeOfFreedom() {
    GlobalTest test = plan.fit().test().orElseThrow();
    assertEquals(1, test.degreesOfFreedom());
    assertEquals(2.77250, test.squareSum(), 1e-5);
    assertEquals(2.77250, test.varianceFactor(), 1e-5);
    assertTrue(test.agrees(0.05));
    assertFalse(test.agrees(0.10));
  }

  /**
   * Euler's theorem on quadrilaterals: the squares of the sides less those of the diagonals are
   * 4m², of second order near a rectangle, so that W is the one misclosure. Then W/(4d) has the
   * uncertainty of one reading, a side moves by −L·W/(8d²), a diagonal by W/(8d), and their
   * redundancies are L²/(4d²) and 1/4; derived by hand, computed apart.
   */
  @Test
  void agreesWithTheClosedFormOfASingleMisclosure() {
    double w = 0;
    for (int i = 0; i < 6; i++) {
      double read = plan.distances().get(i).observation().observed();
      w += (i < 4 ? 1 : -1) * read * read;
    }
    assertEquals(0.149916, w, 5e-7);
    double d = 15;
    assertEquals(2.4986, w / (4 * d) * 1000, 5e-5);
    double chiSquared = w * w / (16 * d * d * SD * SD);
    assertEquals(2.77467, chiSquared, 5e-6);
    assertEquals(chiSquared, plan.fit().test().orElseThrow().squareSum(), 1e-3 * chiSquared);
    double[] nominal = {12, 9, 12, 9, 15, 15};
    for (int i = 0; i < 6; i++) {
      AdjustedObservation one = plan.fit().observations().get(i);
      double residual = i < 4 ? -nominal[i] * w / (8 * d * d) : w / (8 * d);
      double redundancy = i < 4 ? nominal[i] * nominal[i] / (4 * d * d) : 0.25;
      assertEquals(residual, one.residual(), 2e-3 * Math.abs(residual));
      assertEquals(redundancy, one.redundancy(), 1e-3);
    }
  }

  @Test
  void sharesTheRedundancyByLengthSquared() {
    double[] redundancy = {.160, .090, .160, .090, .250, .250};
    double sum = 0;
    for (int i = 0; i < 6; i++) {
      double one = plan.fit().observations().get(i).redundancy();
      assertEquals(redundancy[i], one, 1e-3);
      sum += one;
    }
    assertEquals(1, sum, 1e-12);
  }

  @Test
  void statesCoordinatesWithTheirUncertainties() {
    assertPoint("B", 12.00200, 0, 1.3748, 0);
    assertPoint("C", 12.01112, 8.99725, 1.7758, 1.4315);
    assertPoint("D", 0.01412, 9.00324, 1.8744, 1.4300);
  }

  private void assertPoint(String name, double x, double y, double sdX, double sdY) {
    AdjustedPoint point = plan.point(name);
    assertEquals(x, point.xMetres(), 6e-6);
    assertEquals(y, point.yMetres(), 6e-6);
    assertEquals(sdX, point.xStandardUncertaintyMetres() * 1000, 1e-4);
    assertEquals(sdY, point.yStandardUncertaintyMetres() * 1000, 1e-4);
  }

  @Test
  void statesTheUncertaintyOfAdjustedDistances() {
    assertEquals(1.375, plan.distance("A", "B").standardUncertainty() * 1000, 5e-4);
    assertEquals(1.431, plan.distance("B", "C").standardUncertainty() * 1000, 5e-4);
    assertEquals(1.299, plan.distance("A", "C").standardUncertainty() * 1000, 5e-4);
  }

  @Test
  void statesTheCornerAnglesWhichSumToAFullTurn() {
    double[] degrees = {89.910111, 90.058096, 89.970530, 90.061263};
    String[] corners = {"A", "B", "C", "D"};
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      double angle =
          Math.toDegrees(
              plan.angle(corners[i], corners[(i + 1) % 4], corners[(i + 3) % 4]).value());
      assertEquals(degrees[i], angle, 1e-6);
      sum += angle;
    }
    assertEquals(360, sum, 1e-10);
  }

  @Test
  void statesTheSmallestDetectableSlips() {
    // 2.8016 * 1.5 / sqrt(r) with the redundancies .16, .09, .25 of an exact rectangle: 10.51,
    // 14.01
    // and 8.40. The sides read here differ from 12 m and 9 m by some 0.03 %, hence the tolerance.
    assertEquals(10.506, detectableMillimetres("A-B"), 0.01);
    assertEquals(14.008, detectableMillimetres("B-C"), 0.01);
    assertEquals(8.405, detectableMillimetres("A-C"), 0.01);
  }

  private double detectableMillimetres(String id) {
    return plan.fit().observation(id).smallestDetectableSlip().orElseThrow() * 1000;
  }

  @Test
  void aSlipOnOneDiagonalTurnsAllResidualsRoundAndCannotBeLocated() {
    AdjustedPlan slipped = Quadrilateral.adjusted(15.016);
    assertEquals(2.790, slipped.fit().test().orElseThrow().squareSum(), 5e-4);
    for (int i = 0; i < 6; i++) {
      double before = plan.fit().observations().get(i).residual();
      double after = slipped.fit().observations().get(i).residual();
      assertTrue(before * after < 0);
    }
    AdjustedPlan grossly = Quadrilateral.adjusted(15.106);
    SuspectedSlip slip = grossly.fit().suspectedSlip(0.05).orElseThrow();
    assertEquals(6, slip.observationIds().size());
    assertFalse(slip.located());
  }

  @Test
  void withOneDegreeOfFreedomAllStandardizedResidualsAreOfOneSize() {
    double size = Math.sqrt(plan.fit().test().orElseThrow().squareSum());
    for (AdjustedObservation one : plan.fit().observations()) {
      assertEquals(size, Math.abs(one.standardizedResidual().orElseThrow()), 1e-9);
      assertEquals(
          -one.standardizedResidual().orElseThrow(), one.slipStatistic().orElseThrow(), 1e-9);
      assertEquals(one.residualStandardUncertainty(), SD * Math.sqrt(one.redundancy()), 1e-12);
    }
  }
}
