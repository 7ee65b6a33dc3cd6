package datumpeg.analysis.building;

/**
 * A point of the building as designed, in metres: x along, y across, z above the top of the slab.
 */
public record Position(double xMetres, double yMetres, double zMetres) {
  public double distanceMetres(Position other) {
    double dx = other.xMetres - xMetres;
    double dy = other.yMetres - yMetres;
    double dz = other.zMetres - zMetres;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  public PlanPoint plan() {
    return new PlanPoint(xMetres, yMetres);
  }
}
