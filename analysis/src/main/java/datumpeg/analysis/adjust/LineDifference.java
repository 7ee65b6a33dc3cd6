package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;
import static datumpeg.analysis.adjust.Door.requireName;

/**
 * An observation of how far one station lies beyond another: observed = constant + coefficient ·
 * (to − from). For a distance along the line the coefficient is 1 and the constant 0; for another
 * quantity, such as a tilt, they are those of its linearisation.
 *
 * @param observation in its own unit; of either sign
 * @param coefficient not 0
 */
public record LineDifference(
    String from, String to, Observation observation, double coefficient, double constant) {
  public LineDifference {
    String id = observation.id();
    requireName("line difference", id, from);
    requireName("line difference", id, to);
    requireFinite("line difference", id, "coefficient", coefficient);
    requireFinite("line difference", id, "constant", constant);
    if (coefficient == 0) {
      throw new IllegalArgumentException(
          "line difference " + id + ": coefficient is 0, expected another");
    }
    if (from.equals(to)) {
      throw new IllegalArgumentException(
          "line difference " + id + ": both ends are " + from + ", expected two stations");
    }
  }

  /** A distance along the line, in metres. */
  public LineDifference(String from, String to, Observation observation) {
    this(from, to, observation, 1, 0);
  }

  /** The same difference, observed otherwise. */
  public LineDifference with(Observation other) {
    return new LineDifference(from, to, other, coefficient, constant);
  }
}
