package datumpeg.analysis.building;

import java.util.List;
import java.util.Map;

/** The outline of a slab: which corner follows which, and the angle between them as designed. */
public final class Outline {
  /** Closer than anyone marks out, wider than doubles round. */
  private static final double ON_SIDE_METRES = 1e-9;

  private final Map<String, PlanPoint> places;
  private final List<String> names;

  public Outline(Slab slab) {
    this.places = slab.corners();
    this.names = slab.cornerNames();
  }

  /** The corners in order around the outline. */
  public List<String> corners() {
    return names;
  }

  public String next(String corner) {
    return names.get((names.indexOf(corner) + 1) % names.size());
  }

  public String previous(String corner) {
    return names.get((names.indexOf(corner) + names.size() - 1) % names.size());
  }

  /** Whether a place lies on the straight side from one corner to another, ends included. */
  public boolean isOnSide(PlanPoint point, String from, String to) {
    double length = place(from).distanceMetres(place(to));
    return place(from).distanceMetres(point) + point.distanceMetres(place(to)) - length
        < ON_SIDE_METRES;
  }

  /** Whether a place lies on any side. */
  public boolean isOn(PlanPoint point) {
    return names.stream().anyMatch(corner -> isOnSide(point, corner, next(corner)));
  }

  /** The corner after this one when walking with the slab on the left. */
  public String nextAnticlockwise(String corner) {
    return isAnticlockwise() ? next(corner) : previous(corner);
  }

  /** The corner before this one when walking with the slab on the left. */
  public String previousAnticlockwise(String corner) {
    return isAnticlockwise() ? previous(corner) : next(corner);
  }

  /** Angle inside the slab at a corner as designed, in radians, above π at an inner corner. */
  public double interiorAngleRadians(String corner) {
    double turned =
        bearing(corner, previousAnticlockwise(corner)) - bearing(corner, nextAnticlockwise(corner));
    double whole = 2 * StrictMath.PI;
    return ((turned % whole) + whole) % whole;
  }

  /** Length of the shorter side at a corner as designed, in metres. */
  public double shorterSideMetres(String corner) {
    PlanPoint at = place(corner);
    return Math.min(
        at.distanceMetres(place(next(corner))), at.distanceMetres(place(previous(corner))));
  }

  private double bearing(String from, String to) {
    PlanPoint start = place(from);
    PlanPoint end = place(to);
    return StrictMath.atan2(end.yMetres() - start.yMetres(), end.xMetres() - start.xMetres());
  }

  /** Whether the corners are listed with the slab on the left (shoelace formula). */
  private boolean isAnticlockwise() {
    double sum = 0;
    for (String corner : names) {
      PlanPoint one = place(corner);
      PlanPoint other = place(next(corner));
      sum += one.xMetres() * other.yMetres() - other.xMetres() * one.yMetres();
    }
    return sum > 0;
  }

  private PlanPoint place(String corner) {
    PlanPoint place = places.get(corner);
    if (place == null) {
      throw new UnknownPointException("The slab has no corner " + corner + ".");
    }
    return place;
  }
}
