package datumpeg.analysis.building;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The slab as it should have been poured.
 *
 * @param corners named corners in order around the outline
 * @param levelPoints the points whose level is to be taken, in the order given
 * @param platesMetres thicknesses of the packing plates in stock, ascending
 */
public record Slab(
    Map<String, PlanPoint> corners, List<PointName> levelPoints, List<Double> platesMetres) {
  private static final double EDGE_TOLERANCE_METRES = 0.001;

  /**
   * @throws IllegalArgumentException for fewer than three corners, two corners in one place, sides
   *     that cross, or a plate that has no thickness
   */
  public Slab {
    corners = Collections.unmodifiableMap(new LinkedHashMap<>(corners));
    levelPoints = List.copyOf(levelPoints);
    platesMetres = platesMetres.stream().sorted().toList();
    if (corners.size() < 3) {
      throw new IllegalArgumentException(
          "The slab has " + corners.size() + " corners; an outline needs at least 3.");
    }
    if (corners.values().stream().distinct().count() < corners.size()) {
      throw new IllegalArgumentException("Two corners of the slab stand in the same place.");
    }
    CrossingSides.of(corners)
        .ifPresent(
            sides -> {
              throw new IllegalArgumentException(
                  "The slab's sides "
                      + sides
                      + " cross; expected the corners in order around the outline.");
            });
    for (double plate : platesMetres) {
      if (!(plate > 0)) {
        throw new IllegalArgumentException(
            "A plate is " + LengthText.millimetres(plate) + " thick; expected more than 0.");
      }
    }
  }

  /** The rectangle of span and length, its corners A1, An, Bn, B1. */
  public static Map<String, PlanPoint> rectangle(Building building) {
    int n = building.portalFrameCount();
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("A1", new PlanPoint(0, 0));
    corners.put("A" + n, new PlanPoint(building.lengthMetres(), 0));
    corners.put("B" + n, new PlanPoint(building.lengthMetres(), building.spanMetres()));
    corners.put("B1", new PlanPoint(0, building.spanMetres()));
    return corners;
  }

  /** The corner names, in order around the outline. */
  public List<String> cornerNames() {
    return List.copyOf(corners.keySet());
  }

  /** Whether a place lies within the outline or within a millimetre of it. */
  public boolean covers(PlanPoint place) {
    List<PlanPoint> outline = List.copyOf(corners.values());
    boolean inside = false;
    for (int i = 0; i < outline.size(); i++) {
      PlanPoint from = outline.get(i);
      PlanPoint to = outline.get((i + 1) % outline.size());
      if (distanceFromEdgeMetres(place, from, to) <= EDGE_TOLERANCE_METRES) {
        return true;
      }
      if (crossesAhead(place, from, to)) {
        inside = !inside;
      }
    }
    return inside;
  }

  /** Whether a ray from the place toward larger x crosses the edge (even-odd rule). */
  private static boolean crossesAhead(PlanPoint place, PlanPoint from, PlanPoint to) {
    double y = place.yMetres();
    if ((from.yMetres() > y) == (to.yMetres() > y)) {
      return false;
    }
    double along = (y - from.yMetres()) / (to.yMetres() - from.yMetres());
    return place.xMetres() < from.xMetres() + along * (to.xMetres() - from.xMetres());
  }

  private static double distanceFromEdgeMetres(PlanPoint place, PlanPoint from, PlanPoint to) {
    double dx = to.xMetres() - from.xMetres();
    double dy = to.yMetres() - from.yMetres();
    double along =
        ((place.xMetres() - from.xMetres()) * dx + (place.yMetres() - from.yMetres()) * dy)
            / (dx * dx + dy * dy);
    double clamped = Math.max(0, Math.min(1, along));
    return place.distanceMetres(
        new PlanPoint(from.xMetres() + clamped * dx, from.yMetres() + clamped * dy));
  }
}
