package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireName;
import static datumpeg.analysis.adjust.Door.requireNotNegative;

/**
 * One placing of a level: a plane of unknown height, and of a tilt known to be 0 within limits.
 *
 * @param tiltXStandardUncertaintyRadians standard uncertainty of the plane's slope along x; 0 for a
 *     plane taken as level
 * @param tiltYStandardUncertaintyRadians along y
 */
public record LevelSetUp(
    String id, double tiltXStandardUncertaintyRadians, double tiltYStandardUncertaintyRadians) {
  public LevelSetUp {
    requireName("level set-up", id);
    requireNotNegative(
        "level set-up", id, "tilt uncertainty along x", tiltXStandardUncertaintyRadians);
    requireNotNegative(
        "level set-up", id, "tilt uncertainty along y", tiltYStandardUncertaintyRadians);
  }

  /** A plane taken as level. */
  public static LevelSetUp level(String id) {
    return new LevelSetUp(id, 0, 0);
  }
}
