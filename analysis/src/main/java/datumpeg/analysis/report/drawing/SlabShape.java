package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.check.PointEstimate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The slab's outline as designed, laid so that it can be compared with the found one: A1 at the
 * origin, the last corner of side A on the x axis. An outline without those two corners stays as
 * the job file has it.
 */
record SlabShape(Map<String, PlanPoint> corners) {

  static SlabShape of(Map<String, PlanPoint> drawn) {
    PlanPoint origin = drawn.get("A1");
    Optional<PlanPoint> end = lastOfSideA(drawn);
    if (origin == null || end.isEmpty()) {
      return new SlabShape(drawn);
    }
    double dx = end.get().xMetres() - origin.xMetres();
    double dy = end.get().yMetres() - origin.yMetres();
    double length = StrictMath.hypot(dx, dy);
    Map<String, PlanPoint> laid = new LinkedHashMap<>();
    drawn.forEach((name, point) -> laid.put(name, laid(point, origin, dx / length, dy / length)));
    return new SlabShape(laid);
  }

  /** The corners that were found, in the order of the outline. */
  List<CornerShift> shifts(Map<String, PointEstimate> points) {
    return corners.entrySet().stream()
        .filter(corner -> points.containsKey("slab." + corner.getKey()))
        .map(corner -> shift(corner, points))
        .toList();
  }

  private static CornerShift shift(
      Map.Entry<String, PlanPoint> corner, Map<String, PointEstimate> points) {
    String name = corner.getKey();
    PointEstimate found = java.util.Objects.requireNonNull(points.get("slab." + name));
    return new CornerShift(name, corner.getValue(), found);
  }

  private static PlanPoint laid(PlanPoint point, PlanPoint origin, double ux, double uy) {
    double x = point.xMetres() - origin.xMetres();
    double y = point.yMetres() - origin.yMetres();
    return new PlanPoint(x * ux + y * uy, y * ux - x * uy);
  }

  private static Optional<PlanPoint> lastOfSideA(Map<String, PlanPoint> drawn) {
    return drawn.entrySet().stream()
        .filter(
            corner ->
                GridMark.parse(corner.getKey()).filter(mark -> mark.letter() == 'A').isPresent())
        .filter(corner -> !corner.getKey().equals("A1"))
        .max(
            java.util.Comparator.comparing(
                corner -> GridMark.parse(corner.getKey()).orElseThrow().number()))
        .map(Map.Entry::getValue);
  }
}
