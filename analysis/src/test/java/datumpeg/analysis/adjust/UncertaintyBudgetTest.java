package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.analysis.uncertainty.Budget;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Origin;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The parts of an uncertainty by their origin against a second route: each reading, and each error
 * that readings share, moved a little and the whole adjusted again (JCGM 100:2008, 5.1.3, note 2:
 * sensitivities by varying the inputs).
 */
final class UncertaintyBudgetTest {
  private static final double ZERO_METRES = 0.0008;
  private static final double SCALE = 1e-4;

  /** The readings do not fit exactly, so the answers are not quite those of the linear model. */
  private static final double SECOND_ORDER = 1e-3;

  private static final Map<String, Double> DEFINITIONS =
      Map.of("A", 0.001, "B", 0.004, "C", 0.002, "D", 0.003);

  private static List<MeasuredDistance> taken(double zero, double scale, String moved, double by) {
    List<MeasuredDistance> distances = new ArrayList<>();
    for (MeasuredDistance bare : Quadrilateral.distances(15.006)) {
      Observation reading = bare.observation();
      double length = reading.observed();
      distances.add(
          new MeasuredDistance(
              bare.from(),
              bare.to(),
              new Observation(
                  reading.id(),
                  length
                      + zero * ZERO_METRES
                      + scale * SCALE * length
                      + (reading.id().equals(moved) ? by : 0),
                  reading.independentStandardUncertainty(),
                  List.of(
                      new CommonPart("zero", ZERO_METRES),
                      new CommonPart("scale", SCALE * length)))));
    }
    return distances;
  }

  private static Estimate diagonals(List<MeasuredDistance> taken) {
    AdjustedPlan plan =
        new DistanceNetwork("A", "B", Quadrilateral.CORNERS, taken, DEFINITIONS)
            .adjust()
            .complete()
            .orElseThrow();
    return plan.linearisedDistance("A", "C").minus(plan.linearisedDistance("B", "D")).estimate();
  }

  @Test
  void eachOriginHasWhatItsErrorsDoToTheResult() {
    Estimate difference = diagonals(taken(0, 0, "", 0));
    double scatter = 0;
    double step = 1e-5;
    for (MeasuredDistance reading : taken(0, 0, "", 0)) {
      String id = reading.observation().id();
      double answer =
          (diagonals(taken(0, 0, id, step)).value() - diagonals(taken(0, 0, id, -step)).value())
              / (2 * step);
      double effect = answer * reading.observation().independentStandardUncertainty();
      scatter += effect * effect;
    }
    double zero =
        50 * (diagonals(taken(.01, 0, "", 0)).value() - diagonals(taken(-.01, 0, "", 0)).value());
    double scale =
        50 * (diagonals(taken(0, .01, "", 0)).value() - diagonals(taken(0, -.01, "", 0)).value());
    Budget budget = difference.budget();
    assertEquals(scatter, budget.scatter(), SECOND_ORDER * scatter);
    assertEquals(zero * zero + scale * scale, budget.meter(), SECOND_ORDER * scatter);
    assertEquals(
        difference.standardUncertainty() * difference.standardUncertainty(),
        budget.scatter() + budget.meter() + budget.definition(),
        1e-15);
  }

  /** The definition of the marks is what goes when the marks are the points. */
  @Test
  void theDefinitionOfTheMarksIsWhatTheyAdd() {
    AdjustedPlan marks =
        new DistanceNetwork("A", "B", Quadrilateral.CORNERS, taken(0, 0, "", 0), Map.of())
            .adjust()
            .complete()
            .orElseThrow();
    Estimate exact =
        marks.linearisedDistance("A", "C").minus(marks.linearisedDistance("B", "D")).estimate();
    Estimate all = diagonals(taken(0, 0, "", 0));
    assertEquals(0, exact.budget().variance(Origin.DEFINITION));
    assertEquals(
        exact.standardUncertainty() * exact.standardUncertainty(),
        all.budget().scatter() + all.budget().meter(),
        1e-12);
  }
}
