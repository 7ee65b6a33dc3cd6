package datumpeg.analysis.building;

/**
 * A point of the plan.
 *
 * @param xMetres along the length, from slab corner A1 toward end n
 * @param yMetres across, from side A toward side B
 */
public record PlanPoint(double xMetres, double yMetres) {
  public PlanPoint {
    if (!Double.isFinite(xMetres) || !Double.isFinite(yMetres)) {
      throw new IllegalArgumentException(
          "A plan point needs finite coordinates in metres, found " + xMetres + ", " + yMetres);
    }
  }

  /** The straight distance to another point, in metres. */
  public double distanceMetres(PlanPoint other) {
    double dx = other.xMetres - xMetres;
    double dy = other.yMetres - yMetres;
    return Math.sqrt(dx * dx + dy * dy);
  }
}
