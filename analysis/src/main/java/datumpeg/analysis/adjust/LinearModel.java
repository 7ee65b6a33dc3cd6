package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ejml.data.DMatrixRMaj;

/**
 * Unknowns and the equations that observe them. Either list may be empty.
 *
 * @param unknowns distinct names, in the order of the result
 * @param equations with distinct observation ids
 */
public record LinearModel(List<String> unknowns, List<ObservationEquation> equations) {
  public LinearModel {
    unknowns = List.copyOf(unknowns);
    equations = List.copyOf(equations);
    requireDistinct("unknowns", unknowns);
    requireDistinct("observations", equations.stream().map(e -> e.observation().id()).toList());
    Set<String> known = new LinkedHashSet<>(unknowns);
    for (ObservationEquation equation : equations) {
      for (String unknown : equation.coefficients().keySet()) {
        requireKnown("observation " + equation.observation().id(), unknown, known);
      }
    }
  }

  /** The observations, in order. */
  public List<Observation> observations() {
    return equations.stream().map(ObservationEquation::observation).toList();
  }

  /** Design matrix, n×u. */
  DMatrixRMaj design() {
    Map<String, Integer> columns = new HashMap<>();
    for (String unknown : unknowns) {
      columns.put(unknown, columns.size());
    }
    DMatrixRMaj design = new DMatrixRMaj(equations.size(), unknowns.size());
    for (int row = 0; row < equations.size(); row++) {
      for (Map.Entry<String, Double> entry : equations.get(row).coefficients().entrySet()) {
        design.set(row, columns.getOrDefault(entry.getKey(), 0), entry.getValue());
      }
    }
    return design;
  }
}
