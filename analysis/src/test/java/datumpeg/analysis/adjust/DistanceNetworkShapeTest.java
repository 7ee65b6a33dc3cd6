package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

/** What adjusted distances must satisfy whatever was read. */
final class DistanceNetworkShapeTest {
  /**
   * Four points lie in a plane if the bordered matrix of their squared distances has determinant 0
   * (Cayley and Menger: it is 288 times the squared volume of the tetrahedron).
   */
  @Test
  void adjustedDistancesLieInAPlaneWhichTheObservedOnesDoNot() {
    AdjustedPlan plan = Quadrilateral.adjusted(15.006);
    List<MeasuredDistance> observed = plan.distances();
    assertEquals(
        13977.42,
        cayleyMenger(observed.stream().mapToDouble(d -> d.observation().observed()).toArray()),
        0.01);
    assertEquals(
        0,
        cayleyMenger(
            plan.fit().observations().stream()
                .mapToDouble(AdjustedObservation::adjusted)
                .toArray()),
        1e-6);
    assertEquals(0, cayleyMenger(new double[] {12, 9, 12, 9, 15, 15}), 1e-7);
    // Near a rectangle a by b the determinant is 8 a² b² W, W the misclosure of Euler's theorem.
    assertEquals(13977.42, 8 * 144 * 81 * 0.149916, 1e-3 * 13977.42);
  }

  /** Diagonals too long for the sides: not even in space; too short: it would fold. */
  @Test
  void theDeterminantsSignTellsWhichWayAFigureDoesNotClose() {
    assertTrue(cayleyMenger(new double[] {12, 9, 12, 9, 15.01, 15.01}) < 0);
    assertTrue(cayleyMenger(new double[] {12, 9, 12, 9, 14.99, 14.99}) > 0);
  }

  private static double cayleyMenger(double[] d) {
    double ab = d[0] * d[0];
    double bc = d[1] * d[1];
    double cd = d[2] * d[2];
    double da = d[3] * d[3];
    double ac = d[4] * d[4];
    double bd = d[5] * d[5];
    return new LUDecomposition(
            new Array2DRowRealMatrix(
                new double[][] {
                  {0, 1, 1, 1, 1},
                  {1, 0, ab, ac, da},
                  {1, ab, 0, bc, bd},
                  {1, ac, bc, 0, cd},
                  {1, da, bd, cd, 0}
                }))
        .getDeterminant();
  }

  /**
   * Equal diagonals do not prove a rectangle: an isosceles trapezium 12.10, 9, 12.00, 9 has them.
   */
  @Test
  void equalDiagonalsOfATrapeziumDoNotHideItsCorners() {
    double diagonal = Math.sqrt(9 * 9 + 12.10 * 12.00);
    AdjustedPlan plan =
        new DistanceNetwork(
                "A",
                "B",
                Quadrilateral.CORNERS,
                List.of(
                    Quadrilateral.distance("A", "B", 12.10),
                    Quadrilateral.distance("B", "C", 9),
                    Quadrilateral.distance("C", "D", 12.00),
                    Quadrilateral.distance("D", "A", 9),
                    Quadrilateral.distance("A", "C", diagonal),
                    Quadrilateral.distance("B", "D", diagonal)))
            .adjust()
            .complete()
            .orElseThrow();
    assertEquals(0, plan.fit().test().orElseThrow().squareSum(), 1e-12);
    double expected = Math.acos(0.05 / 9);
    Estimate atA = plan.angle("A", "B", "D");
    assertEquals(expected, atA.value(), 1e-9);
    assertEquals(Math.PI - expected, plan.angle("C", "D", "B").value(), 1e-9);
    assertTrue(Math.abs(atA.value() - Math.PI / 2) > 10 * atA.standardUncertainty());
    Linearised difference =
        plan.linearisedDistance("A", "C").minus(plan.linearisedDistance("B", "D"));
    assertEquals(0, difference.value(), 1e-9);
  }

  /** 3-4-5: an exact right angle, known as well as the cosine rule says. */
  @Test
  void threeFourFiveIsARightAngle() {
    AdjustedPlan plan =
        new DistanceNetwork(
                "corner",
                "four",
                List.of(
                    new PlanPoint("corner", 0, 0),
                    new PlanPoint("four", 4, 0),
                    new PlanPoint("three", 0.1, 2.9)),
                List.of(
                    Quadrilateral.distance("corner", "four", 4),
                    Quadrilateral.distance("corner", "three", 3),
                    Quadrilateral.distance("four", "three", 5)))
            .adjust()
            .complete()
            .orElseThrow();
    Estimate angle = plan.angle("corner", "four", "three");
    assertEquals(Math.PI / 2, angle.value(), 1e-12);
    // c^2 = a^2 + b^2 - 2ab cos: d(angle) = (c dc - a da - b db) / (a b) at a right angle
    assertEquals(0.0015 * Math.sqrt(50) / 12, angle.standardUncertainty(), 1e-12);
    assertEquals(1.5 * Math.PI, plan.angle("corner", "three", "four").value(), 1e-12);
  }

  @Test
  void figuresDoNotDependOnWhereTheDrawingLies() {
    assertSameFigure(p -> new PlanPoint(p.name(), p.xMetres() + 70, p.yMetres() - 30), 1, 1);
    assertSameFigure(
        p ->
            new PlanPoint(
                p.name(),
                0.6 * p.xMetres() - 0.8 * p.yMetres(),
                0.8 * p.xMetres() + 0.6 * p.yMetres()),
        1,
        1);
  }

  @Test
  void aMirroredDrawingMirrorsTheFigure() {
    assertSameFigure(p -> new PlanPoint(p.name(), p.xMetres(), -p.yMetres()), 1, -1);
  }

  @Test
  void figuresDoNotDependOnTheUnit() {
    assertSameFigure(
        p -> new PlanPoint(p.name(), p.xMetres() / 0.3048, p.yMetres() / 0.3048), 1 / 0.3048, 1);
  }

  private static void assertSameFigure(UnaryOperator<PlanPoint> moved, double unit, int hand) {
    List<MeasuredDistance> scaled = new ArrayList<>();
    for (MeasuredDistance d : Quadrilateral.distances(15.006)) {
      scaled.add(
          Quadrilateral.distance(
              d.from(), d.to(), d.observation().observed() * unit, 0.0015 * unit));
    }
    AdjustedPlan plan =
        new DistanceNetwork("A", "B", Quadrilateral.CORNERS.stream().map(moved).toList(), scaled)
            .adjust()
            .complete()
            .orElseThrow();
    AdjustedPlan reference = Quadrilateral.adjusted(15.006);
    for (String name : reference.names()) {
      assertEquals(reference.point(name).xMetres() * unit, plan.point(name).xMetres(), 1e-9);
      assertEquals(reference.point(name).yMetres() * unit * hand, plan.point(name).yMetres(), 1e-9);
    }
    double angle = reference.angle("A", "B", "D").value();
    assertEquals(hand > 0 ? angle : 2 * Math.PI - angle, plan.angle("A", "B", "D").value(), 1e-10);
    assertEquals(
        reference.angle("A", "B", "D").standardUncertainty(),
        plan.angle("A", "B", "D").standardUncertainty(),
        1e-12);
    assertEquals(
        reference.fit().test().orElseThrow().squareSum(),
        plan.fit().test().orElseThrow().squareSum(),
        1e-7);
  }

  /** Minimal constraints: whichever two points carry the datum, all else is the free network. */
  @Test
  void whatDistancesKnowDoesNotDependOnTheDatum() {
    AdjustedPlan reference = Quadrilateral.adjusted(15.006);
    for (String origin : reference.names()) {
      for (String axis : reference.names()) {
        if (!origin.equals(axis)) {
          AdjustedPlan plan =
              new DistanceNetwork(
                      origin, axis, Quadrilateral.CORNERS, Quadrilateral.distances(15.006))
                  .adjust()
                  .complete()
                  .orElseThrow();
          assertSameStatements(reference, plan);
        }
      }
    }
  }

  @Test
  void theOrderOfReadingsAndOfPointsDoesNotMatter() {
    AdjustedPlan reference = Quadrilateral.adjusted(15.006);
    Random random = new Random(5);
    for (int run = 0; run < 10; run++) {
      List<MeasuredDistance> shuffled = new ArrayList<>(Quadrilateral.distances(15.006));
      List<PlanPoint> points = new ArrayList<>(Quadrilateral.CORNERS);
      Collections.shuffle(shuffled, random);
      Collections.shuffle(points, random);
      assertSameStatements(
          reference,
          new DistanceNetwork("A", "B", points, shuffled).adjust().complete().orElseThrow());
    }
  }

  @Test
  void eitherEndOfADistanceMayBeNamedFirst() {
    List<MeasuredDistance> turned =
        Quadrilateral.distances(15.006).stream()
            .map(d -> new MeasuredDistance(d.to(), d.from(), d.observation()))
            .toList();
    assertSameStatements(
        Quadrilateral.adjusted(15.006),
        new DistanceNetwork("A", "B", Quadrilateral.CORNERS, turned)
            .adjust()
            .complete()
            .orElseThrow());
  }

  private static void assertSameStatements(AdjustedPlan reference, AdjustedPlan plan) {
    assertEquals(
        reference.fit().test().orElseThrow().squareSum(),
        plan.fit().test().orElseThrow().squareSum(),
        1e-8);
    for (AdjustedObservation one : reference.fit().observations()) {
      AdjustedObservation other = plan.fit().observation(one.observation().id());
      assertEquals(one.residual(), other.residual(), 1e-11);
      assertEquals(one.redundancy(), other.redundancy(), 1e-9);
    }
    assertClose(reference.angle("A", "B", "D"), plan.angle("A", "B", "D"));
    assertClose(reference.distance("B", "D"), plan.distance("B", "D"));
    assertClose(reference.offset("C", "A", "D").estimate(), plan.offset("C", "A", "D").estimate());
  }

  private static void assertClose(Estimate expected, Estimate actual) {
    assertEquals(expected.value(), actual.value(), 1e-10);
    assertEquals(expected.standardUncertainty(), actual.standardUncertainty(), 1e-11);
  }
}
