package datumpeg.analysis.reduce;

import static datumpeg.analysis.reduce.TrueValues.part;
import static datumpeg.analysis.reduce.TrueValues.point;

import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.simulate.SimulatedSite;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What is true of how straight rows of marks, bases and slab edges are. */
final class TrueRows {
  private TrueRows() {}

  /**
   * {@code line.A/chord}, {@code edge.B/best}, {@code slab.A1-A4/chord}: greatest distance from the
   * line through the true ends, or from the line of total least squares, whose direction is that of
   * the greater spread (the turned axes of the second moments).
   */
  static double straightness(SimulatedSite site, String target) {
    List<PlanPoint> row = row(site, part(target, 0));
    if (part(target, 1).equals("chord")) {
      PlanPoint start = row.get(0);
      PlanPoint end = row.get(row.size() - 1);
      return greatest(
          row,
          start,
          StrictMath.atan2(end.yMetres() - start.yMetres(), end.xMetres() - start.xMetres()));
    }
    double x = row.stream().mapToDouble(PlanPoint::xMetres).average().orElseThrow();
    double y = row.stream().mapToDouble(PlanPoint::yMetres).average().orElseThrow();
    double xx = row.stream().mapToDouble(p -> (p.xMetres() - x) * (p.xMetres() - x)).sum();
    double yy = row.stream().mapToDouble(p -> (p.yMetres() - y) * (p.yMetres() - y)).sum();
    double xy = row.stream().mapToDouble(p -> (p.xMetres() - x) * (p.yMetres() - y)).sum();
    return greatest(row, new PlanPoint(x, y), StrictMath.atan2(2 * xy, xx - yy) / 2);
  }

  private static double greatest(List<PlanPoint> row, PlanPoint through, double direction) {
    return row.stream()
        .mapToDouble(
            p ->
                Math.abs(
                    (p.yMetres() - through.yMetres()) * StrictMath.cos(direction)
                        - (p.xMetres() - through.xMetres()) * StrictMath.sin(direction)))
        .max()
        .orElseThrow();
  }

  /** Where the points of a row truly are, from end to end. */
  private static List<PlanPoint> row(SimulatedSite site, String name) {
    SetOut setOut = site.setOut();
    String feature = name.substring(0, name.indexOf('.'));
    String side = name.substring(name.indexOf('.') + 1);
    Stream<PointName> points =
        switch (feature) {
          case "edge" ->
              Stream.concat(
                  Stream.of(point("edge." + side + "@(0)"), point("edge." + side + "@(18)")),
                  site.shifts().keySet().stream()
                      .filter(p -> p.feature().equals("edge") && p.place().startsWith(side + "@")));
          case "slab" ->
              site.shifts().keySet().stream()
                  .filter(p -> p.feature().equals("slab"))
                  .filter(p -> isMeasured(setOut, p))
                  .filter(p -> isOnSide(setOut, p, List.of(side.split("-"))));
          default -> setOut.portalFrameNumbers().stream().map(n -> point(feature + "." + side + n));
        };
    return points
        .distinct()
        .sorted(Comparator.comparingDouble(p -> setOut.position(p).xMetres()))
        .map(p -> site.position(p).plan())
        .toList();
  }

  /** Corners, and places levelled: those are measured to along the sides. */
  private static boolean isMeasured(SetOut setOut, PointName point) {
    return point.gridMark().isPresent() || setOut.slab().levelPoints().contains(point);
  }

  private static boolean isOnSide(SetOut setOut, PointName point, List<String> ends) {
    return new Outline(setOut.slab())
        .isOnSide(setOut.position(point).plan(), ends.get(0), ends.get(1));
  }
}
