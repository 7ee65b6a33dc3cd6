package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One row of a linear model: observed = constant + sum of coefficient times unknown + error.
 *
 * @param coefficients by the unknown's name; an unknown that is not named has coefficient 0
 * @param constant in the observation's unit; for a linearised model the value computed from the
 *     approximate unknowns
 */
public record ObservationEquation(
    Observation observation, Map<String, Double> coefficients, double constant) {
  public ObservationEquation {
    coefficients = Collections.unmodifiableMap(new LinkedHashMap<>(coefficients));
    requireFinite("observation", observation.id(), "constant", constant);
    for (Map.Entry<String, Double> one : coefficients.entrySet()) {
      if (!Double.isFinite(one.getValue())) {
        requireFinite(
            "observation", observation.id(), "coefficient of " + one.getKey(), one.getValue());
      }
    }
  }
}
