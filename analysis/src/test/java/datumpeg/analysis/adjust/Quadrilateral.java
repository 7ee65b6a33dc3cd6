package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.List;

/**
 * The worked case of the tests: six distances of a quadrilateral 12 m × 9 m with 1.5 mm each.
 * Invented readings; the expected values were computed by Gauss-Newton in numpy and by a general
 * optimiser in R, which agree to 1e-6.
 */
final class Quadrilateral {
  static final double STANDARD_UNCERTAINTY = 0.0015;

  static final List<PlanPoint> CORNERS =
      List.of(
          new PlanPoint("A", 0, 0),
          new PlanPoint("B", 12, 0),
          new PlanPoint("C", 12, 9),
          new PlanPoint("D", 0, 9));

  private Quadrilateral() {}

  static List<MeasuredDistance> distances(double diagonalAcMetres) {
    List<MeasuredDistance> taken = new ArrayList<>();
    taken.add(distance("A", "B", 12.003));
    taken.add(distance("B", "C", 8.998));
    taken.add(distance("C", "D", 11.998));
    taken.add(distance("D", "A", 9.004));
    taken.add(distance("A", "C", diagonalAcMetres));
    taken.add(distance("B", "D", 14.991));
    return taken;
  }

  static AdjustedPlan adjusted(double diagonalAcMetres) {
    return new DistanceNetwork("A", "B", CORNERS, distances(diagonalAcMetres))
        .adjust()
        .complete()
        .orElseThrow();
  }

  static MeasuredDistance distance(String from, String to, double metres) {
    return distance(from, to, metres, STANDARD_UNCERTAINTY);
  }

  static MeasuredDistance distance(String from, String to, double metres, double uncertainty) {
    return new MeasuredDistance(
        from, to, Observation.independent(from + "-" + to, metres, uncertainty));
  }
}
