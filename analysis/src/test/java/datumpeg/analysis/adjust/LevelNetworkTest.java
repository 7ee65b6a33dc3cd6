package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LevelNetworkTest {
  private static final double U = 0.001;

  /** A 3 × 3 grid, 6 m × 4 m. */
  private static List<PlanPoint> grid() {
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      int row = i / 3;
      points.add(new PlanPoint("p" + i, 3.0 * (i % 3), 2.0 * row));
    }
    return points;
  }

  private static LevelReading reading(
      String setUp, String point, double metres, CommonPart... parts) {
    return new LevelReading(
        setUp, point, new Observation(setUp + "/" + point, metres, U, List.of(parts)));
  }

  private static AdjustedLevels levels(LevelSetUp setUp, double... heights) {
    List<LevelReading> readings = new ArrayList<>();
    for (int i = 0; i < heights.length; i++) {
      readings.add(reading(setUp.id(), "p" + i, heights[i]));
    }
    return new LevelNetwork(grid().subList(0, heights.length), List.of(setUp), readings)
        .adjust()
        .complete()
        .orElseThrow();
  }

  @Test
  void levelsAreRelativeToTheirMean() {
    AdjustedLevels levels = levels(LevelSetUp.level("s"), 1.502, 1.498, 1.500);
    assertEquals(0.002, levels.level("p0").value(), 1e-12);
    assertEquals(-0.002, levels.level("p1").value(), 1e-12);
    assertEquals(0, levels.level("p2").value(), 1e-12);
    assertEquals(U * Math.sqrt(2.0 / 3), levels.level("p0").standardUncertainty(), 1e-12);
    assertEquals(-U * U / 3, levels.covariance("p0", "p1"), 1e-15);
    assertEquals(-0.004, levels.difference("p0", "p1").value(), 1e-12);
    assertEquals(U * Math.sqrt(2), levels.difference("p0", "p1").standardUncertainty(), 1e-12);
    assertTrue(levels.fit().test().isEmpty());
  }

  @Test
  void aZeroErrorCommonToASetUpDropsOut() {
    CommonPart zero = new CommonPart("level|s zero", 0.05);
    List<LevelReading> readings =
        List.of(reading("s", "p0", 1.5, zero), reading("s", "p1", 1.6, zero));
    AdjustedLevels levels =
        new LevelNetwork(grid().subList(0, 2), List.of(LevelSetUp.level("s")), readings)
            .adjust()
            .complete()
            .orElseThrow();
    assertEquals(U * Math.sqrt(2), levels.difference("p0", "p1").standardUncertainty(), 1e-10);
  }

  /** Tilt 0.1 mm/m over 6 m: sqrt(2 u^2 + 0.6^2) mm, however the set-up's centre is chosen. */
  @Test
  void aTiltedPlaneWidensDifferencesAlongIt() {
    AdjustedLevels levels = levels(new LevelSetUp("s", 1e-4, 0), 0, 0, 0, 0, 0, 0, 0, 0, 0);
    assertEquals(
        Math.sqrt(2 * U * U + 0.36e-6), levels.difference("p0", "p2").standardUncertainty(), 1e-12);
    assertEquals(U * Math.sqrt(2), levels.difference("p0", "p6").standardUncertainty(), 1e-12);
    BestPlane plane = levels.bestPlane().complete().orElseThrow();
    // slope variance of nine points: u^2 / sum x^2 = u^2 / 54, plus the tilt's own
    assertEquals(
        Math.sqrt(U * U / 54 + 1e-8), plane.slopeX().estimate().standardUncertainty(), 1e-12);
    assertEquals(Math.sqrt(U * U / 24), plane.slopeY().estimate().standardUncertainty(), 1e-12);
  }

  /** Two set-ups that share points show a tilt: the second, taken as level, corrects the first. */
  @Test
  void aSecondSetUpShowsTheTiltOfTheFirst() {
    double tilt = 5e-4;
    List<LevelReading> readings = new ArrayList<>();
    for (PlanPoint point : grid()) {
      readings.add(reading("tilted", point.name(), tilt * point.xMetres()));
      readings.add(reading("level", point.name(), 0.3));
    }
    AdjustedLevels levels =
        new LevelNetwork(
                grid(),
                List.of(new LevelSetUp("tilted", 1e-2, 0), LevelSetUp.level("level")),
                readings)
            .adjust()
            .complete()
            .orElseThrow();
    assertEquals(0, levels.difference("p0", "p2").value(), 1e-5);
    assertEquals(
        tilt, 1e-2 * levels.fit().commonEffect(LevelNetwork.tiltX("tilted")).value(), 2e-6);
    assertEquals(8, levels.fit().degreesOfFreedom());
    assertTrue(levels.fit().test().orElseThrow().agrees(0.05));
  }

  @Test
  void setUpsThatShareAPointAreJoinedAndTested() {
    List<LevelReading> readings =
        List.of(
            reading("s", "p0", 1.0),
            reading("s", "p1", 1.1),
            reading("t", "p1", 2.1),
            reading("t", "p2", 2.3),
            reading("s", "p2", 1.303));
    AdjustedLevels levels =
        new LevelNetwork(
                grid().subList(0, 3),
                List.of(LevelSetUp.level("s"), LevelSetUp.level("t")),
                readings)
            .adjust()
            .complete()
            .orElseThrow();
    assertEquals(1, levels.fit().degreesOfFreedom());
    // misclosure 3 mm of four readings: 9 / 4
    assertEquals(2.25, levels.fit().test().orElseThrow().squareSum(), 1e-9);
    assertEquals(0.2015, levels.difference("p1", "p2").value(), 1e-9);
  }

  @Test
  void setUpsWithoutACommonPointAreNamed() {
    List<LevelReading> readings =
        List.of(
            reading("s", "p0", 1),
            reading("s", "p1", 1),
            reading("s", "p2", 1.3),
            reading("t", "p3", 2),
            reading("t", "p4", 2));
    Adjustment<AdjustedLevels> result =
        new LevelNetwork(
                grid().subList(0, 6),
                List.of(LevelSetUp.level("s"), LevelSetUp.level("t")),
                readings)
            .adjust();
    Undetermined<?> loose = assertInstanceOf(Undetermined.class, result);
    assertEquals(List.of("p3", "p4", "p5"), loose.names());
    assertTrue(loose.reason().contains("p3, p4, p5"));
    AdjustedLevels part = result.available().orElseThrow();
    assertEquals(List.of("p0", "p1", "p2"), part.names());
    assertEquals(0.2, part.level("p2").value(), 1e-12);
  }

  @Test
  void withoutReadingsOrPointsNothingIsDetermined() {
    Adjustment<AdjustedLevels> unread = new LevelNetwork(grid(), List.of(), List.of()).adjust();
    assertTrue(unread.available().isEmpty());
    assertTrue(new LevelNetwork(List.of(), List.of(), List.of()).adjust().available().isEmpty());
    Adjustment<AdjustedLevels> single =
        new LevelNetwork(grid().subList(0, 1), List.of(), List.of()).adjust();
    assertTrue(single.available().isEmpty());
  }

  @Test
  void onePointIsItsOwnMean() {
    AdjustedLevels levels = levels(LevelSetUp.level("s"), 1.5);
    assertEquals(0, levels.level("p0").value());
    assertEquals(0, levels.level("p0").standardUncertainty(), 1e-15);
    assertTrue(levels.bestPlane().complete().isEmpty());
  }

  @Test
  void findsThePlaneAndWhatStandsOutOfIt() {
    double[] heights = new double[9];
    for (int i = 0; i < 9; i++) {
      PlanPoint point = grid().get(i);
      heights[i] = 0.002 * point.xMetres() - 0.001 * point.yMetres();
    }
    double bump = 0.009;
    heights[4] += bump;
    AdjustedLevels levels = levels(LevelSetUp.level("s"), heights);
    BestPlane plane = levels.bestPlane().complete().orElseThrow();
    assertEquals(2, plane.slopeXMillimetresPerMetre().value(), 1e-9);
    assertEquals(-1, plane.slopeYMillimetresPerMetre().value(), 1e-9);
    assertEquals("p4", plane.high().name());
    assertEquals(bump * 8 / 9, plane.abovePlane("p4").value(), 1e-12);
    assertEquals(-bump / 9, plane.abovePlane("p0").value(), 1e-12);
    assertEquals(
        U * Math.sqrt(8.0 / 9), plane.abovePlane("p4").estimate().standardUncertainty(), 1e-12);
    assertEquals(plane.heightAt(3, 2).value(), plane.intercept().value() + 0.006 - 0.002, 1e-12);
  }

  @Test
  void pointsOnOneLineHoldNoPlane() {
    Undetermined<?> plane =
        assertInstanceOf(
            Undetermined.class, levels(LevelSetUp.level("s"), 0, 0.001, 0.003).bestPlane());
    assertTrue(plane.reason().contains("one line"));
  }

  @Test
  void aFlatSlabHasNoSlope() {
    BestPlane plane =
        levels(LevelSetUp.level("s"), 1, 1, 1, 1, 1, 1, 1, 1, 1)
            .bestPlane()
            .complete()
            .orElseThrow();
    assertEquals(0, plane.slopeX().value(), 1e-15);
    assertEquals(0, plane.abovePlane(plane.high().name()).value(), 1e-15);
  }

  @Test
  void refusesWhatIsNoLevelling() {
    assertThrows(IllegalArgumentException.class, () -> new LevelSetUp("s", -1, 0));
    assertThrows(IllegalArgumentException.class, () -> new LevelSetUp("s", 0, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> reading("s", "p0", Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new LevelNetwork(grid(), List.of(), List.of(reading("s", "p0", 1))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new LevelNetwork(
                grid(), List.of(LevelSetUp.level("s")), List.of(reading("s", "q", 1))));
  }
}
