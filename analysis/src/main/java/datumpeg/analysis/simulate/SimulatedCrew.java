package datumpeg.analysis.simulate;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How well a crew hits what it measures. A crew without marks takes a spalled corner now here, now
 * there, anew at each reading; one that marks its points first is beside each of them once, and
 * takes every reading from the mark.
 *
 * @param definitionsMetres standard deviation of the place taken for a point at each reading, along
 *     the line measured, by the point's feature; a feature not named is hit exactly
 * @param marks how far beside the point each mark is, in metres; a point not named has none
 */
public record SimulatedCrew(Map<String, Double> definitionsMetres, Map<PointName, Position> marks) {
  /** Hits every point exactly. */
  public static final SimulatedCrew EXACT = new SimulatedCrew(Map.of());

  /**
   * @throws IllegalArgumentException for a negative or non-finite standard deviation
   */
  public SimulatedCrew {
    definitionsMetres = Map.copyOf(definitionsMetres);
    marks = Map.copyOf(marks);
    definitionsMetres.forEach(
        (feature, metres) -> {
          if (!(metres >= 0) || !Double.isFinite(metres)) {
            throw new IllegalArgumentException(
                "A crew hits "
                    + feature
                    + " points with a standard deviation of "
                    + metres
                    + " m; expected 0 or more.");
          }
        });
  }

  /** Takes each point anew at each reading. */
  public SimulatedCrew(Map<String, Double> definitionsMetres) {
    this(definitionsMetres, Map.of());
  }

  /**
   * Marks each point once, beside where it is by normal draws in x, y and level.
   *
   * @param definitionsMetres standard deviation of each of the three, by the point's feature
   * @param points in an order that does not change from run to run
   */
  public static SimulatedCrew marking(
      Map<String, Double> definitionsMetres, Collection<PointName> points, NormalDraws draws) {
    Map<PointName, Position> marks = new LinkedHashMap<>();
    for (PointName point : points) {
      double beside = definitionsMetres.getOrDefault(point.feature(), 0.0);
      marks.put(point, new Position(draws.next(beside), draws.next(beside), draws.next(beside)));
    }
    return new SimulatedCrew(Map.of(), marks);
  }

  /** How far from the point the crew measured this time. Always uses up one draw. */
  double missMetres(PointName point, NormalDraws draws) {
    return draws.next(definitionsMetres.getOrDefault(point.feature(), 0.0));
  }
}
