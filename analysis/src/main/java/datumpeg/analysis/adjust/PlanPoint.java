package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;
import static datumpeg.analysis.adjust.Door.requireName;

/**
 * A named point in plan: where it ought to be, for a start.
 *
 * @param xMetres in any right-handed frame, the same for all points
 */
public record PlanPoint(String name, double xMetres, double yMetres) {
  public PlanPoint {
    requireName("plan point", name);
    requireFinite("plan point", name, "x", xMetres);
    requireFinite("plan point", name, "y", yMetres);
  }

  double distanceTo(PlanPoint other) {
    double dx = other.xMetres - xMetres;
    double dy = other.yMetres - yMetres;
    return Math.sqrt(dx * dx + dy * dy);
  }
}
