package datumpeg.analysis.reduce;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.uncertainty.Origin;
import java.util.Set;

/**
 * How the readings behind an outcome could be made more certain, by what that takes away. The
 * readings keep their weights: weighted anew they would be somewhat more certain still, so that a
 * way that is told to decide does.
 */
enum Improvement {
  /** Each reading the mean of very many: only what repeats cannot shrink is left. */
  REPEATS,
  /** The temperature of the steel is read. */
  TEMPERATURE_READ,
  /** The error a meter's readings share is known: both faces, a known distance, a second set-up. */
  METER_CHECKED,
  /** The points are marked once and read to the mark. */
  POINTS_MARKED,
  /** A meter without errors. */
  OTHER_METER;

  /** What standard uncertainty it would leave of an outcome's. */
  double leaves(Outcome outcome) {
    return outcome.budget().standardUncertaintyWithout(gone());
  }

  private Set<Origin> gone() {
    return switch (this) {
      case REPEATS -> Set.of(Origin.SCATTER);
      case TEMPERATURE_READ -> Set.of(Origin.TEMPERATURE);
      case METER_CHECKED -> Set.of(Origin.METER);
      case POINTS_MARKED -> Set.of(Origin.DEFINITION);
      case OTHER_METER -> Set.of(Origin.SCATTER, Origin.METER);
    };
  }
}
