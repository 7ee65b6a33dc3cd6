package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.ejml.data.DMatrixRMaj;

/** Unknowns and the equations that observe them. Either list may be empty. Immutable. */
public final class LinearModel {
  private final List<String> unknowns;
  private final List<ObservationEquation> equations;
  private final Map<String, Integer> positions = new HashMap<>();

  /**
   * @param unknowns distinct names, in the order of the result
   * @param equations with distinct observation ids
   */
  public LinearModel(List<String> unknowns, List<ObservationEquation> equations) {
    this.unknowns = List.copyOf(unknowns);
    this.equations = List.copyOf(equations);
    requireDistinct("unknowns", unknowns);
    requireDistinct("observations", equations, equation -> equation.observation().id());
    unknowns.forEach(unknown -> positions.put(unknown, positions.size()));
    for (ObservationEquation equation : equations) {
      for (String unknown : equation.coefficients().keySet()) {
        requireKnown("observation", equation.observation().id(), unknown, positions.keySet());
      }
    }
  }

  /** Names of the unknowns, in the order of the result. */
  public List<String> unknowns() {
    return unknowns;
  }

  /** What observes them. */
  public List<ObservationEquation> equations() {
    return equations;
  }

  /** Place of an unknown in their order. */
  int position(String unknown) {
    return Objects.requireNonNull(positions.get(unknown), unknown);
  }

  /** The observations, in order. */
  public List<Observation> observations() {
    return equations.stream().map(ObservationEquation::observation).toList();
  }

  /** Design matrix, n×u. */
  DMatrixRMaj design() {
    DMatrixRMaj design = new DMatrixRMaj(equations.size(), unknowns.size());
    for (int row = 0; row < equations.size(); row++) {
      for (Map.Entry<String, Double> entry : equations.get(row).coefficients().entrySet()) {
        design.set(row, position(entry.getKey()), entry.getValue());
      }
    }
    return design;
  }
}
