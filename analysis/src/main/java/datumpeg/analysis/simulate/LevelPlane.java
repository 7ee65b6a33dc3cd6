package datumpeg.analysis.simulate;

import datumpeg.analysis.building.Position;

/**
 * The plane a level sees as level in one set-up: its height over slab corner A1, and how much it
 * rises a metre in truth.
 *
 * @param heightMetres over the origin of the plan
 * @param risePerMetreAlong rise toward end n
 * @param risePerMetreAcross rise toward side B
 */
public record LevelPlane(double heightMetres, double risePerMetreAlong, double risePerMetreAcross) {
  /** At the level of the plan's origin, truly level. */
  public static final LevelPlane TRUE = new LevelPlane(0, 0, 0);

  double heightMetresAt(Position point) {
    return heightMetres
        + risePerMetreAlong * point.xMetres()
        + risePerMetreAcross * point.yMetres();
  }
}
