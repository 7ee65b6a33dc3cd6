package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class NextMeasurementTest {
  /** A slab with an inner corner, 18 m × 12 m; invented. */
  private static final List<PlanPoint> L_SHAPE =
      List.of(
          new PlanPoint("A1", 0, 0),
          new PlanPoint("A4", 18, 0),
          new PlanPoint("B4", 18, 6),
          new PlanPoint("B2", 8, 6),
          new PlanPoint("C2", 8, 12),
          new PlanPoint("C1", 0, 12));

  private static final Map<String, Double> DEFINITIONS = Map.of("C1", 0.001, "A1", 0.0005);

  private static Observation accuracy(String id, String from, String to) {
    double length = point(from).distanceTo(point(to));
    return new Observation(
        id,
        length,
        0.001,
        List.of(
            new CommonPart("laser zero", 0.0007), new CommonPart("laser scale", 5e-5 * length)));
  }

  private static PlanPoint point(String name) {
    return L_SHAPE.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  private static MeasuredDistance taken(String id, String from, String to) {
    return new MeasuredDistance(from, to, accuracy(id, from, to));
  }

  private static List<MeasuredDistance> distances(String... pairs) {
    List<MeasuredDistance> distances = new ArrayList<>();
    for (String pair : pairs) {
      distances.add(taken(pair, pair.substring(0, 2), pair.substring(3)));
    }
    return distances;
  }

  private static AdjustedPlan plan(List<MeasuredDistance> distances) {
    return new DistanceNetwork("A1", "A4", L_SHAPE, distances, DEFINITIONS)
        .adjust()
        .complete()
        .orElseThrow();
  }

  private static List<NextMeasurement.Candidate> all() {
    List<NextMeasurement.Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < L_SHAPE.size(); i++) {
      for (int j = i + 1; j < L_SHAPE.size(); j++) {
        String from = L_SHAPE.get(i).name();
        String to = L_SHAPE.get(j).name();
        candidates.add(
            new NextMeasurement.Candidate(new PointPair(from, to), accuracy("next", from, to)));
      }
    }
    return candidates;
  }

  /** Nine distances fix six points; these ten check them once. */
  private static List<MeasuredDistance> checked() {
    return distances(
        "A1-A4", "A4-B4", "B4-B2", "B2-C2", "C2-C1", "C1-A1", "A1-B4", "A1-B2", "A1-C2", "A4-C2");
  }

  /** Second route: adjust again with each candidate, and look at the worst point. */
  @Test
  void isTheDistanceThatAdjustingAgainFindsBest() {
    AdjustedPlan plan = plan(checked());
    NextMeasurement next = NextMeasurement.among(plan, all()).orElseThrow();
    assertEquals(NextMeasurement.Reason.REDUCES_WORST_POINT, next.reason());
    assertEquals(plan.point(next.point()).largestSemiAxisMetres(), next.nowMetres(), 1e-12);
    double least = Double.POSITIVE_INFINITY;
    for (NextMeasurement.Candidate candidate : all()) {
      List<MeasuredDistance> more = new ArrayList<>(checked());
      more.add(
          new MeasuredDistance(
              candidate.pair().first(), candidate.pair().second(), candidate.accuracy()));
      double then = plan(more).point(next.point()).largestSemiAxisMetres();
      if (candidate.pair().equals(next.pair())) {
        assertEquals(then, next.thenMetres(), 1e-8);
      }
      least = Math.min(least, then);
    }
    assertEquals(least, next.thenMetres(), 1e-8);
    assertTrue(next.thenMetres() < next.nowMetres());
    plan.points().forEach(p -> assertTrue(p.largestSemiAxisMetres() <= next.nowMetres() + 1e-12));
  }

  @Test
  void withoutRedundancyItIsTheOneThatLetsASlipShow() {
    List<MeasuredDistance> nine = new ArrayList<>(checked());
    nine.remove(9);
    AdjustedPlan plan = plan(nine);
    assertEquals(0, plan.fit().degreesOfFreedom());
    NextMeasurement next = NextMeasurement.among(plan, all()).orElseThrow();
    assertEquals(NextMeasurement.Reason.MAKES_CHECKABLE, next.reason());
    nine.add(taken("next", next.pair().first(), next.pair().second()));
    AdjustedPlan better = plan(nine);
    assertEquals(1, better.fit().degreesOfFreedom());
    assertTrue(
        better.fit().observations().stream().filter(AdjustedObservation::checked).count() > 2);
  }

  /** Marks defined to 50 mm: what the meter could still gain is nothing beside that. */
  @Test
  void nothingHelpsWhereTheMarksLimit() {
    AdjustedPlan plan =
        new DistanceNetwork(
                "A1",
                "A4",
                L_SHAPE,
                checked(),
                Map.of("A1", 0.05, "A4", 0.05, "B4", 0.05, "B2", 0.05, "C2", 0.05, "C1", 0.05))
            .adjust()
            .complete()
            .orElseThrow();
    assertTrue(NextMeasurement.among(plan, all()).isEmpty());
    assertTrue(NextMeasurement.among(plan(checked()), List.of()).isEmpty());
  }
}
