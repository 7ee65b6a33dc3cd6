package datumpeg.analysis.simulate;

import datumpeg.analysis.building.PointName;
import java.util.Map;

/**
 * How well a crew hits what it measures: a spalled corner is taken now here, now there, anew at
 * each reading.
 *
 * @param definitionsMetres standard deviation of the place taken for a point, along the line
 *     measured, by the point's feature; a feature not named is hit exactly
 */
public record SimulatedCrew(Map<String, Double> definitionsMetres) {
  /** Hits every point exactly. */
  public static final SimulatedCrew EXACT = new SimulatedCrew(Map.of());

  /**
   * @throws IllegalArgumentException for a negative or non-finite standard deviation
   */
  public SimulatedCrew {
    definitionsMetres = Map.copyOf(definitionsMetres);
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

  /** How far from the point the crew measured this time. Always uses up one draw. */
  double missMetres(PointName point, NormalDraws draws) {
    return draws.next(definitionsMetres.getOrDefault(point.feature(), 0.0));
  }
}
