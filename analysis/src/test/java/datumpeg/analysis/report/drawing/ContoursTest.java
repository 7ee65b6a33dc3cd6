package datumpeg.analysis.report.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ContoursTest {
  private static List<PlanPoint> grid(int count) {
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < count; j++) {
        points.add(new PlanPoint(3.0 * i, 2.0 * j));
      }
    }
    return points;
  }

  private static double plane(PlanPoint point) {
    return 0.002 * point.xMetres() - 0.003 * point.yMetres();
  }

  /** On a tilted plane every line of equal level is straight: its level is the plane's there. */
  @Test
  void linesOfATiltedPlaneLieWhereThePlaneHasTheirLevel() {
    List<PlanPoint> points = grid(4);
    List<Contours.Piece> pieces =
        new Contours(points, points.stream().map(ContoursTest::plane).toList()).pieces(0.004);
    assertFalse(pieces.isEmpty());
    for (Contours.Piece piece : pieces) {
      assertEquals(piece.level(), plane(piece.from()), 1e-12);
      assertEquals(piece.level(), plane(piece.to()), 1e-12);
    }
    double length =
        pieces.stream()
            .filter(piece -> Math.abs(piece.level()) < 1e-9)
            .mapToDouble(piece -> piece.from().distanceMetres(piece.to()))
            .sum();
    // The zero line of the plane runs from (0, 0) to (9, 6): no gap, and no piece drawn twice.
    assertEquals(Math.sqrt(9 * 9 + 6 * 6), length, 1e-9);
  }

  /** Each level of a tilted plane is one line, so it is named once. */
  @Test
  void piecesThatHangTogetherAreOneLine() {
    List<PlanPoint> points = grid(4);
    List<List<Contours.Piece>> lines =
        Contours.joined(
            new Contours(points, points.stream().map(ContoursTest::plane).toList()).pieces(0.004));
    List<Double> levels = lines.stream().map(line -> line.get(0).level()).toList();
    assertEquals(levels.stream().distinct().count(), levels.size(), levels::toString);
  }

  /** Two hills at the ends of a floor: the line around each is a line of its own. */
  @Test
  void linesOfOneLevelThatAreApartStayApart() {
    List<PlanPoint> points = new ArrayList<>();
    List<Double> levels = new ArrayList<>();
    for (double x : new double[] {0, 6, 12, 18}) {
      for (double y : new double[] {0, 9}) {
        points.add(new PlanPoint(x, y));
        levels.add(x == 0 || x == 18 ? 0.01 : -0.01);
      }
    }
    List<List<Contours.Piece>> lines =
        Contours.joined(new Contours(points, levels).pieces(0.004)).stream()
            .filter(line -> Math.abs(line.get(0).level()) < 1e-9)
            .toList();
    assertEquals(2, lines.size());
  }

  @Test
  void aLevelFloorAndTooFewPointsHaveNoLines() {
    List<PlanPoint> points = grid(3);
    assertTrue(
        new Contours(points, points.stream().map(point -> 0.0).toList()).pieces(0.001).isEmpty());
    assertTrue(new Contours(points.subList(0, 2), List.of(0.0, 0.01)).pieces(0.001).isEmpty());
  }

  @Test
  void pointsInOneLineMakeNoTriangle() {
    List<PlanPoint> line = List.of(new PlanPoint(0, 0), new PlanPoint(1, 0), new PlanPoint(2, 0));
    assertTrue(new Contours(line, List.of(0.0, 0.01, 0.02)).pieces(0.001).isEmpty());
  }
}
