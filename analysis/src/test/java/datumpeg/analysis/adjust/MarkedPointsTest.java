package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A mark beside its point is one error for all readings of it, however often it is read. */
final class MarkedPointsTest {
  private static final Map<String, Double> DEFINITIONS =
      Map.of("A", 0.001, "B", 0.004, "C", 0.002, "D", 0.003);

  private static AdjustedPlan plan(List<MeasuredDistance> taken, Map<String, Double> definitions) {
    return new DistanceNetwork("A", "B", Quadrilateral.CORNERS, taken, definitions)
        .adjust()
        .complete()
        .orElseThrow();
  }

  /**
   * Second route: every mark's displacement along x and y is an unknown observed to be 0, beside
   * the coordinates of the points. Same coordinates, same covariance, same residuals, same tests as
   * with the displacements added after the adjustment of the marks.
   */
  @Test
  void anUnknownForEachMarkGivesTheSameAsCovarianceAddedAfterwards() {
    List<MeasuredDistance> taken = Quadrilateral.distances(15.006);
    AdjustedPlan plan = plan(taken, DEFINITIONS);
    Fit fit = LeastSquares.adjust(withDisplacements(plan, taken)).complete().orElseThrow();
    for (String point : plan.names()) {
      if (!point.equals("A")) {
        assertEquals(
            fit.parameters().estimate("x of " + point).standardUncertainty(),
            plan.point(point).xStandardUncertaintyMetres(),
            1e-9,
            point);
      }
    }
    assertEquals(
        fit.parameters().covariance("x of C", "y of D"),
        plan.x("C").covarianceWith(plan.y("D")),
        1e-12);
    assertEquals(
        fit.parameters().covariance("x of D", "y of D"),
        plan.point("D").covarianceSquareMetres(),
        1e-12);
    assertEquals(
        fit.test().orElseThrow().squareSum(), plan.fit().test().orElseThrow().squareSum(), 1e-6);
    for (AdjustedObservation one : plan.fit().observations()) {
      AdjustedObservation other = fit.observation(one.observation().id());
      assertEquals(one.residual(), other.residual(), 1e-9);
      assertEquals(one.redundancy(), other.redundancy(), 1e-7);
      assertEquals(
          one.smallestDetectableSlip().orElseThrow(),
          other.smallestDetectableSlip().orElseThrow(),
          1e-8);
    }
  }

  /** Distances of marks, linear about the adjusted figure, with shared errors for the marks. */
  private static LinearModel withDisplacements(AdjustedPlan plan, List<MeasuredDistance> taken) {
    List<String> unknowns = List.of("x of B", "x of C", "y of C", "x of D", "y of D");
    List<ObservationEquation> equations = new ArrayList<>();
    for (MeasuredDistance distance : taken) {
      AdjustedPoint from = plan.point(distance.from());
      AdjustedPoint to = plan.point(distance.to());
      double length = plan.distance(distance.from(), distance.to()).value();
      double cosine = (to.xMetres() - from.xMetres()) / length;
      double sine = (to.yMetres() - from.yMetres()) / length;
      Map<String, Double> all = new LinkedHashMap<>();
      all.put("x of " + from.name(), -cosine);
      all.put("y of " + from.name(), -sine);
      all.put("x of " + to.name(), cosine);
      all.put("y of " + to.name(), sine);
      Observation observation = distance.observation();
      for (Map.Entry<String, Double> entry : all.entrySet()) {
        String point = entry.getKey().substring("x of ".length());
        observation =
            observation.withCommonPart(
                new CommonPart(
                    "mark " + entry.getKey(),
                    entry.getValue() * DEFINITIONS.getOrDefault(point, 0.0)));
      }
      all.keySet().retainAll(unknowns);
      equations.add(new ObservationEquation(observation, all, length));
    }
    return new LinearModel(unknowns, equations);
  }

  /** 12 m between marks of 1 and 4 mm, read so often that the meter no longer counts. */
  @Test
  void repeatsDoNotShrinkIt() {
    List<MeasuredDistance> taken = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      for (MeasuredDistance once : Quadrilateral.distances(15)) {
        taken.add(
            new MeasuredDistance(
                once.from(),
                once.to(),
                Observation.independent(
                    once.observation().id() + i, once.observation().observed(), 1e-5)));
      }
    }
    AdjustedPlan plan = plan(taken, DEFINITIONS);
    assertEquals(
        Math.sqrt(0.001 * 0.001 + 0.004 * 0.004),
        plan.distance("A", "B").standardUncertainty(),
        1e-8);
  }

  /** Distances and angles do not ask which two points carry the datum, marks or not. */
  @Test
  void whatIsKnownOfTheFigureDoesNotDependOnTheDatum() {
    AdjustedPlan reference = plan(Quadrilateral.distances(15.006), DEFINITIONS);
    for (String origin : reference.names()) {
      for (String axis : reference.names()) {
        if (!origin.equals(axis)) {
          AdjustedPlan other =
              new DistanceNetwork(
                      origin,
                      axis,
                      Quadrilateral.CORNERS,
                      Quadrilateral.distances(15.006),
                      DEFINITIONS)
                  .adjust()
                  .complete()
                  .orElseThrow();
          assertEquals(
              reference.angle("C", "D", "B").standardUncertainty(),
              other.angle("C", "D", "B").standardUncertainty(),
              1e-10);
          assertEquals(
              reference.distance("B", "D").standardUncertainty(),
              other.distance("B", "D").standardUncertainty(),
              1e-9);
        }
      }
    }
  }

  @Test
  void theOriginStaysExactAndTheAxisStaysOnItsLine() {
    AdjustedPlan plan = plan(Quadrilateral.distances(15.006), DEFINITIONS);
    assertEquals(0, plan.point("A").xStandardUncertaintyMetres());
    assertEquals(0, plan.point("B").yStandardUncertaintyMetres());
    assertTrue(plan.point("B").xStandardUncertaintyMetres() > 0.004);
  }

  @Test
  void refusesADefinitionBelowZero() {
    assertThrows(
        IllegalArgumentException.class,
        () -> plan(Quadrilateral.distances(15.006), Map.of("A", -0.001)));
    assertThrows(
        IllegalArgumentException.class,
        () -> plan(Quadrilateral.distances(15.006), Map.of("A", Double.NaN)));
  }
}
