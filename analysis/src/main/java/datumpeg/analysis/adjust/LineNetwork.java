package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

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
    requireDistinct("line differences", differences, one -> one.observation().id());
    Set<String> known = new LinkedHashSet<>(stations);
    for (LineDifference difference : differences) {
      String id = difference.observation().id();
      requireKnown("line difference", id, difference.from(), known);
      requireKnown("line difference", id, difference.to(), known);
    }
  }

  /** How many differences there are beyond those that hold the stations together. */
  public int redundancy() {
    return differences.size() - stations.size() + parts().groups().size();
  }

  private Components parts() {
    Components parts = new Components(stations);
    differences.forEach(difference -> parts.join(difference.from(), difference.to()));
    return parts;
  }

  /** Adjusts all differences together; always possible. */
  public AdjustedLine adjust() {
    Components parts = parts();
    Set<String> unknowns = new LinkedHashSet<>();
    for (String station : stations) {
      if (!parts.head(station).equals(station)) {
        unknowns.add(station);
      }
    }
    List<ObservationEquation> equations = new ArrayList<>();
    for (LineDifference difference : differences) {
      Map<String, Double> coefficients = new LinkedHashMap<>();
      put(coefficients, unknowns, difference.from(), -difference.coefficient());
      put(coefficients, unknowns, difference.to(), difference.coefficient());
      equations.add(
          new ObservationEquation(difference.observation(), coefficients, difference.constant()));
    }
    Fit fit =
        LeastSquares.adjust(new LinearModel(List.copyOf(unknowns), equations))
            .complete()
            .orElseThrow(() -> new AssertionError("a connected line is always determined"));
    return new AdjustedLine(parts.groups(), fit);
  }

  private static void put(
      Map<String, Double> coefficients, Set<String> unknowns, String station, double coefficient) {
    if (unknowns.contains(station)) {
      coefficients.put(station, coefficient);
    }
  }
}
