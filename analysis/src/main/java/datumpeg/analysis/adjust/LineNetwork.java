package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Stations along one line and the differences observed between them: bay by bay, running from one
 * end, or both. Stations that no chain of observations connects form separate parts; each part's
 * first station is its zero. All parts are adjusted together, because a meter's common error ties
 * them.
 *
 * @param stations distinct names
 * @param differences between those stations, with distinct observation ids
 */
public record LineNetwork(List<String> stations, List<LineDifference> differences) {
  public LineNetwork {
    stations = List.copyOf(stations);
    differences = List.copyOf(differences);
    requireDistinct("stations", stations);
    requireDistinct(
        "line differences", differences.stream().map(d -> d.observation().id()).toList());
    for (LineDifference difference : differences) {
      requireKnown("line difference " + difference.observation().id(), difference.from(), stations);
      requireKnown("line difference " + difference.observation().id(), difference.to(), stations);
    }
  }

  /** Adjusts all differences together; always possible. */
  public AdjustedLine adjust() {
    Components parts = new Components(stations);
    differences.forEach(difference -> parts.join(difference.from(), difference.to()));
    List<String> unknowns =
        stations.stream().filter(station -> !parts.head(station).equals(station)).toList();
    List<ObservationEquation> equations = new ArrayList<>();
    for (LineDifference difference : differences) {
      Map<String, Double> coefficients = new LinkedHashMap<>();
      put(coefficients, unknowns, difference.from(), -difference.coefficient());
      put(coefficients, unknowns, difference.to(), difference.coefficient());
      equations.add(
          new ObservationEquation(difference.observation(), coefficients, difference.constant()));
    }
    Fit fit =
        LeastSquares.adjust(new LinearModel(unknowns, equations))
            .complete()
            .orElseThrow(() -> new AssertionError("a connected line is always determined"));
    return new AdjustedLine(parts.groups(), fit);
  }

  private static void put(
      Map<String, Double> coefficients, List<String> unknowns, String station, double coefficient) {
    if (unknowns.contains(station)) {
      coefficients.put(station, coefficient);
    }
  }
}
