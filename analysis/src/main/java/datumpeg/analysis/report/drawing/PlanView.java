package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import java.util.Collection;
import java.util.List;

/**
 * Turns places of the plan into spots on the drawing: end 1 left, side A at the bottom. The top of
 * the plan lies at height 0 of the drawing.
 *
 * @param unitsPerMetre the drawing's scale
 */
record PlanView(double leftMetres, double topMetres, double marginUnits, double unitsPerMetre) {

  /**
   * The largest view of all points that fits.
   *
   * @param marginUnits kept free on the left and on the right
   * @param heightUnits how high the plan may become
   */
  static PlanView fitting(
      Collection<PlanPoint> points, double widthUnits, double marginUnits, double heightUnits) {
    double left = points.stream().mapToDouble(PlanPoint::xMetres).min().orElse(0);
    double right = points.stream().mapToDouble(PlanPoint::xMetres).max().orElse(1);
    double low = points.stream().mapToDouble(PlanPoint::yMetres).min().orElse(0);
    double high = points.stream().mapToDouble(PlanPoint::yMetres).max().orElse(1);
    double across = widthUnits - 2 * marginUnits;
    double scale =
        Math.min(across / Math.max(right - left, 1e-3), heightUnits / Math.max(high - low, 1e-3));
    double margin = (widthUnits - scale * (right - left)) / 2;
    return new PlanView(left, high, margin, scale);
  }

  Spot spot(PlanPoint point) {
    return new Spot(
        marginUnits + (point.xMetres() - leftMetres) * unitsPerMetre,
        (topMetres - point.yMetres()) * unitsPerMetre);
  }

  List<Spot> spots(Collection<PlanPoint> points) {
    return points.stream().map(this::spot).toList();
  }
}
