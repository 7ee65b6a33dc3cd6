package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.Observation;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A network in which slips are looked for: whatever can be adjusted again with other values. {@link
 * SlipNetworks} has those of room {@code adjust}.
 */
public interface SlipNetwork {
  /** The observations as they are, each with the id of its reading. */
  List<Observation> observations();

  /**
   * Adjusts with these observations in place of the others.
   *
   * @param changed the same ids in the same order, some with another value or more shared errors
   * @return empty if they cannot be adjusted or leave something undetermined
   */
  Optional<Fit> fit(List<Observation> changed);

  /**
   * A fit whose closed forms tell beforehand what a change would do. For a network that is not
   * linear this is best linearised at the drawing, which no slip has bent.
   */
  default Optional<Fit> foresight() {
    return fit(observations());
  }

  /**
   * Readings that could be taken besides, to tell some suspects apart.
   *
   * @param suspects ids of the readings suspected
   */
  default Optional<FurtherReadings> further(Set<String> suspects) {
    return Optional.empty();
  }
}
