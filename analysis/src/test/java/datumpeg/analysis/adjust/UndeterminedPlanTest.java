package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Too few distances, distances in the wrong places, figures that may lie either way up. */
final class UndeterminedPlanTest {
  private static final List<PlanPoint> CORNERS = Quadrilateral.CORNERS;

  private static Adjustment<AdjustedPlan> adjusted(List<PlanPoint> points, String... pairs) {
    List<MeasuredDistance> taken = new ArrayList<>();
    for (String pair : pairs) {
      PlanPoint from = named(points, pair.substring(0, 1));
      PlanPoint to = named(points, pair.substring(1, 2));
      taken.add(
          new MeasuredDistance(
              from.name(), to.name(), Observation.independent(pair, from.distanceTo(to), 0.0015)));
    }
    return new DistanceNetwork("A", "B", points, taken).adjust();
  }

  private static PlanPoint named(List<PlanPoint> points, String name) {
    return points.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  private static Undetermined<AdjustedPlan> undetermined(List<PlanPoint> points, String... pairs) {
    if (adjusted(points, pairs) instanceof Undetermined<AdjustedPlan> loose) {
      assertTrue(loose.complete().isEmpty());
      return loose;
    }
    throw new AssertionError("the network is determined");
  }

  @Test
  void fourSidesLeaveAQuadrilateralFreeToRackAndOneDiagonalFixesIt() {
    Undetermined<AdjustedPlan> loose = undetermined(CORNERS, "AB", "BC", "CD", "DA");
    assertEquals(List.of("C", "D"), loose.names());
    assertEquals(List.of(new PointPair("A", "C")), loose.missing());
    assertTrue(loose.reason().contains("C, D"));
    AdjustedPlan part = loose.available().orElseThrow();
    assertEquals(List.of("A", "B"), part.names());
    AdjustedPlan fixed = adjusted(CORNERS, "AB", "BC", "CD", "DA", "AC").complete().orElseThrow();
    assertEquals(0, fixed.fit().degreesOfFreedom());
    assertEquals(Optional.of(new PointPair("B", "D")), fixed.suggestedCheck());
    AdjustedPlan checked =
        adjusted(CORNERS, "AB", "BC", "CD", "DA", "AC", "BD").complete().orElseThrow();
    assertEquals(Optional.empty(), checked.suggestedCheck());
  }

  @Test
  void withoutDistancesNothingIsFixed() {
    Undetermined<AdjustedPlan> loose = undetermined(CORNERS);
    assertEquals(List.of("A", "B", "C", "D"), loose.names());
    assertEquals(5, loose.missing().size());
    assertEquals(Optional.empty(), loose.available());
  }

  @Test
  void adviceFixesWhatItSaysItFixes() {
    String[] taken = {"AB", "CD"};
    Undetermined<AdjustedPlan> loose = undetermined(CORNERS, taken);
    List<String> pairs = new ArrayList<>(List.of(taken));
    loose.missing().forEach(pair -> pairs.add(pair.first() + pair.second()));
    assertEquals(5, pairs.size());
    assertTrue(adjusted(CORNERS, pairs.toArray(String[]::new)).complete().isPresent());
  }

  @Test
  void aPointWithoutDistancesIsNamedAndTheRestIsAdjusted() {
    List<PlanPoint> points = new ArrayList<>(CORNERS);
    points.add(new PlanPoint("E", 6, 12));
    Undetermined<AdjustedPlan> loose =
        undetermined(points, "AB", "BC", "CD", "DA", "AC", "BD", "CE");
    assertEquals(List.of("E"), loose.names());
    AdjustedPlan rest = loose.available().orElseThrow();
    assertEquals(List.of("A", "B", "C", "D"), rest.names());
    assertEquals(1, rest.fit().degreesOfFreedom());
    assertEquals(1, loose.missing().size());
  }

  @Test
  void theLooseCornerIsNamedEvenWhenItCarriesTheDatum() {
    Undetermined<AdjustedPlan> loose =
        undetermined(
            List.of(
                new PlanPoint("A", 0, 0),
                new PlanPoint("B", 12, 0),
                new PlanPoint("C", 12, 9),
                new PlanPoint("D", 0, 9),
                new PlanPoint("E", 6, 14)),
            "AB",
            "BC",
            "CD",
            "BD",
            "CE",
            "DE",
            "BE");
    assertEquals(List.of("A"), loose.names());
    assertEquals(List.of("B", "C", "D", "E"), loose.available().orElseThrow().names());
  }

  @Test
  void disconnectedFiguresAreToldApart() {
    List<PlanPoint> points = new ArrayList<>(CORNERS);
    points.add(new PlanPoint("P", 30, 0));
    points.add(new PlanPoint("Q", 34, 0));
    points.add(new PlanPoint("R", 30, 3));
    Undetermined<AdjustedPlan> loose =
        undetermined(points, "AB", "BC", "CD", "DA", "AC", "PQ", "QR", "PR");
    assertEquals(List.of("P", "Q", "R"), loose.names());
    assertEquals(3, loose.missing().size());
  }

  @Test
  void aPointOnTheLineOfTheTwoItWasMeasuredFromIsTooWeaklyHeld() {
    List<PlanPoint> points = new ArrayList<>(CORNERS);
    points.add(new PlanPoint("E", 6, 0.005));
    Undetermined<AdjustedPlan> weak =
        undetermined(points, "AB", "BC", "CD", "DA", "AC", "BD", "AE", "BE");
    assertEquals(List.of("E"), weak.names());
    assertTrue(weak.reason().contains("side"), weak.reason());
    assertEquals(1, weak.missing().size());
    assertEquals("E", weak.missing().get(0).second());
    assertEquals(List.of("A", "B", "C", "D"), weak.available().orElseThrow().names());
    assertTrue(
        adjusted(points, "AB", "BC", "CD", "DA", "AC", "BD", "AE", "BE", "CE")
            .complete()
            .isPresent());
  }

  /** Drawn 0.1 m off the line, read 2 mm too short to reach it at all. */
  @Test
  void aPointReadTooShortForItsPlaceLeavesTheRestStanding() {
    List<PlanPoint> points = new ArrayList<>(CORNERS);
    points.add(new PlanPoint("E", 6, 0.1));
    List<MeasuredDistance> taken = new ArrayList<>(Quadrilateral.distances(15.006));
    taken.add(Quadrilateral.distance("A", "E", 6.000));
    taken.add(Quadrilateral.distance("E", "B", 6.000));
    Adjustment<AdjustedPlan> result = new DistanceNetwork("A", "B", points, taken).adjust();
    assertEquals(Optional.empty(), result.complete());
    AdjustedPlan rest = result.available().orElseThrow();
    assertEquals(List.of("A", "B", "C", "D"), rest.names());
    assertEquals(12.002001, rest.distance("A", "B").value(), 1e-6);
  }

  @Test
  void aPointWhoseMirrorImageIsCloseIsSaid() {
    List<PlanPoint> points = new ArrayList<>(CORNERS);
    points.add(new PlanPoint("E", 6, 0.4));
    AdjustedPlan plan =
        adjusted(points, "AB", "BC", "CD", "DA", "AC", "BD", "AE", "BE").complete().orElseThrow();
    MirrorAmbiguity mirror = plan.mirrorAmbiguities().get(0);
    assertEquals(1, plan.mirrorAmbiguities().size());
    assertEquals(List.of("E"), mirror.points());
    assertEquals(new PointPair("A", "B"), mirror.hinge());
    assertEquals(2 * plan.point("E").yMetres(), mirror.apartMetres(), 1e-12);
    AdjustedPlan held =
        adjusted(points, "AB", "BC", "CD", "DA", "AC", "BD", "AE", "BE", "CE")
            .complete()
            .orElseThrow();
    assertEquals(List.of(), held.mirrorAmbiguities());
    assertEquals(List.of(), Quadrilateral.adjusted(15.006).mirrorAmbiguities());
  }

  @Test
  void aFlatTriangleMayLieEitherWayUp() {
    List<PlanPoint> flat =
        List.of(new PlanPoint("A", 0, 0), new PlanPoint("B", 12, 0), new PlanPoint("C", 6, -0.5));
    AdjustedPlan plan = adjusted(flat, "AB", "AC", "BC").complete().orElseThrow();
    assertEquals(List.of("C"), plan.mirrorAmbiguities().get(0).points());
    assertTrue(plan.point("C").yMetres() < 0);
  }

  @Test
  void twoPointsAreALineAndARepeatChecksIt() {
    List<PlanPoint> two = CORNERS.subList(0, 2);
    AdjustedPlan single = adjusted(two, "AB").complete().orElseThrow();
    assertEquals(12, single.distance("A", "B").value(), 1e-12);
    assertEquals(Optional.empty(), single.suggestedCheck());
    MeasuredDistance again =
        new MeasuredDistance("B", "A", Observation.independent("again", 12.004, 0.0015));
    AdjustedPlan twice =
        new DistanceNetwork("A", "B", two, List.of(Quadrilateral.distance("A", "B", 12), again))
            .adjust()
            .complete()
            .orElseThrow();
    assertEquals(12.002, twice.distance("A", "B").value(), 1e-12);
    assertEquals(0.0015 / Math.sqrt(2), twice.distance("A", "B").standardUncertainty(), 1e-12);
    assertEquals(1, twice.fit().degreesOfFreedom());
  }

  /** A reading that misses by ten metres still ends in an answer, and the test rejects it. */
  @Test
  void aDroppedMetreIsAnAnswerTheTestRejects() {
    AdjustedPlan plan = Quadrilateral.adjusted(14.006);
    assertTrue(plan.fit().test().orElseThrow().probability() < 1e-6);
  }

  /** Distances no figure has: the triangle inequality fails by far. */
  @Test
  void impossibleDistancesNeverThrow() {
    Adjustment<AdjustedPlan> result =
        new DistanceNetwork(
                "A",
                "B",
                CORNERS.subList(0, 3),
                List.of(
                    Quadrilateral.distance("A", "B", 12),
                    Quadrilateral.distance("B", "C", 3),
                    Quadrilateral.distance("A", "C", 30)))
            .adjust();
    assertTrue(result.complete().isEmpty());
  }

  @Test
  void refusesWhatIsNoNetwork() {
    assertThrows(IllegalArgumentException.class, () -> new PlanPoint("A", Double.NaN, 0));
    assertThrows(IllegalArgumentException.class, () -> Quadrilateral.distance("A", "B", 0));
    assertThrows(IllegalArgumentException.class, () -> Quadrilateral.distance("A", "B", -1));
    assertThrows(IllegalArgumentException.class, () -> Quadrilateral.distance("A", "A", 1));
    assertThrows(
        IllegalArgumentException.class, () -> Quadrilateral.distance("A", "B", Double.NaN));
    assertThrows(
        IllegalArgumentException.class, () -> new DistanceNetwork("A", "A", CORNERS, List.of()));
    assertThrows(
        IllegalArgumentException.class, () -> new DistanceNetwork("A", "Z", CORNERS, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new DistanceNetwork("A", "B", List.of(CORNERS.get(0)), List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new DistanceNetwork("A", "B", CORNERS, List.of(Quadrilateral.distance("A", "Z", 1))));
    MeasuredDistance side = Quadrilateral.distance("A", "B", 12);
    assertThrows(
        IllegalArgumentException.class,
        () -> new DistanceNetwork("A", "B", CORNERS, List.of(side, side)));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new DistanceNetwork(
                "A", "B", List.of(CORNERS.get(0), new PlanPoint("B", 0, 0)), List.of()));
  }

  /** Five distances of 9 m: with the sixth left out, the two corners it would join fall on one. */
  @Test
  void pointsThatFallOnOnePlaceAreSaid() {
    List<MeasuredDistance> taken = new java.util.ArrayList<>();
    for (String[] pair :
        new String[][] {{"A", "B"}, {"B", "C"}, {"C", "D"}, {"D", "A"}, {"B", "D"}}) {
      taken.add(Quadrilateral.distance(pair[0], pair[1], 9));
    }
    List<PlanPoint> corners =
        List.of(
            new PlanPoint("A", 0, 0),
            new PlanPoint("B", 12, 0),
            new PlanPoint("C", 0.1, 0.1),
            new PlanPoint("D", 0, 9));
    Undetermined<?> result =
        org.junit.jupiter.api.Assertions.assertInstanceOf(
            Undetermined.class, new DistanceNetwork("A", "B", corners, taken).adjust());
    assertEquals(List.of("A", "C"), result.names());
    assertTrue(result.reason().contains("A and C fall on one place"), result.reason());
  }
}
