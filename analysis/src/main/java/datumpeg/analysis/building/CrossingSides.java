package datumpeg.analysis.building;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds two sides of a polygon of named corners that cross. */
final class CrossingSides {
  private final List<String> names;
  private final List<PlanPoint> points;

  private CrossingSides(Map<String, PlanPoint> corners) {
    this.names = List.copyOf(corners.keySet());
    this.points = List.copyOf(corners.values());
  }

  /** Two sides that cross, as {@code A1-B4 and A4-B1}; empty if the outline is a simple one. */
  static Optional<String> of(Map<String, PlanPoint> corners) {
    CrossingSides outline = new CrossingSides(corners);
    int count = outline.points.size();
    for (int i = 0; i < count; i++) {
      for (int j = i + 2; j < count; j++) {
        boolean neighbours = i == 0 && j == count - 1;
        if (!neighbours && outline.cross(i, j)) {
          return Optional.of(outline.side(i) + " and " + outline.side(j));
        }
      }
    }
    return Optional.empty();
  }

  /** Each side has the other's ends on different hands. */
  private boolean cross(int i, int j) {
    return hand(i, at(j)) * hand(i, at(j + 1)) < 0 && hand(j, at(i)) * hand(j, at(i + 1)) < 0;
  }

  /** Positive if the point is left of the side, negative if right: the cross product. */
  private double hand(int side, PlanPoint point) {
    PlanPoint from = at(side);
    PlanPoint to = at(side + 1);
    return (to.xMetres() - from.xMetres()) * (point.yMetres() - from.yMetres())
        - (to.yMetres() - from.yMetres()) * (point.xMetres() - from.xMetres());
  }

  private PlanPoint at(int index) {
    return points.get(index % points.size());
  }

  private String side(int index) {
    return names.get(index) + "-" + names.get((index + 1) % names.size());
  }
}
