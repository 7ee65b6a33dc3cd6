package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines of equal level between measured points: straight across each triangle of a Delaunay
 * triangulation, so that no level is shown that does not lie between two measured ones (B.
 * Delaunay, Sur la sphère vide, 1934: no point lies inside a triangle's circumcircle).
 */
final class Contours {
  /** With more points every triple would be tried too long. */
  private static final int MOST_POINTS = 60;

  /** Points of a grid lie on common circles; moved by this part of their extent they do not. */
  private static final double JOG = 1e-7;

  /** A triangle so flat, as part of the sum of its squared sides, is none. */
  private static final double SLIVER = 1e-4;

  private final List<PlanPoint> points;
  private final List<Double> levels;

  /**
   * @param levels of the points, in their order
   */
  Contours(List<PlanPoint> points, List<Double> levels) {
    this.points = List.copyOf(points);
    this.levels = List.copyOf(levels);
  }

  /** A piece of a line. */
  record Piece(double level, PlanPoint from, PlanPoint to) {
    double length() {
      return from.distanceMetres(to);
    }

    private boolean meets(Piece other) {
      return level == other.level
          && (near(from, other.from)
              || near(from, other.to)
              || near(to, other.from)
              || near(to, other.to));
    }

    /** Two triangles reckon the crossing of the edge they share each for itself. */
    private static boolean near(PlanPoint one, PlanPoint other) {
      return Math.abs(one.xMetres() - other.xMetres()) < 1e-6
          && Math.abs(one.yMetres() - other.yMetres()) < 1e-6;
    }
  }

  /** The lines that pieces make: those of one level that hang together. */
  static List<List<Piece>> joined(List<Piece> pieces) {
    List<List<Piece>> lines = new ArrayList<>();
    for (Piece piece : pieces) {
      List<List<Piece>> met =
          lines.stream().filter(line -> line.stream().anyMatch(piece::meets)).toList();
      List<Piece> line = new ArrayList<>(List.of(piece));
      met.forEach(line::addAll);
      lines.removeAll(met);
      lines.add(line);
    }
    return lines;
  }

  /** All pieces at whole multiples of a step; none for fewer than three points. */
  List<Piece> pieces(double step) {
    List<Piece> pieces = new ArrayList<>();
    for (int[] triangle : triangles()) {
      double low = Math.min(level(triangle, 0), Math.min(level(triangle, 1), level(triangle, 2)));
      double high = Math.max(level(triangle, 0), Math.max(level(triangle, 1), level(triangle, 2)));
      for (double k = Math.ceil(low / step); k * step < high; k++) {
        cut(triangle, k * step, pieces);
      }
    }
    return pieces;
  }

  private double level(int[] triangle, int corner) {
    return levels.get(triangle[corner]);
  }

  private void cut(int[] triangle, double level, List<Piece> pieces) {
    List<PlanPoint> crossings = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      double from = level(triangle, i);
      double to = level(triangle, (i + 1) % 3);
      if ((from < level) != (to < level)) {
        double part = (level - from) / (to - from);
        PlanPoint a = points.get(triangle[i]);
        PlanPoint b = points.get(triangle[(i + 1) % 3]);
        crossings.add(
            new PlanPoint(
                a.xMetres() + part * (b.xMetres() - a.xMetres()),
                a.yMetres() + part * (b.yMetres() - a.yMetres())));
      }
    }
    if (crossings.size() == 2) {
      pieces.add(new Piece(level, crossings.get(0), crossings.get(1)));
    }
  }

  private List<int[]> triangles() {
    List<int[]> triangles = new ArrayList<>();
    int count = points.size() > MOST_POINTS ? 0 : points.size();
    double[][] places = jogged();
    for (int a = 0; a < count; a++) {
      for (int b = a + 1; b < count; b++) {
        for (int c = b + 1; c < count; c++) {
          if (isEmpty(places, a, b, c)) {
            triangles.add(new int[] {a, b, c});
          }
        }
      }
    }
    return triangles;
  }

  private double[][] jogged() {
    double[][] places = new double[points.size()][];
    for (int i = 0; i < places.length; i++) {
      PlanPoint point = points.get(i);
      double extent = 1 + Math.abs(point.xMetres()) + Math.abs(point.yMetres());
      // Steps of the golden section never fall into a pattern of their own.
      double turn = 2 * StrictMath.PI * (i * 0.618033988749895 % 1);
      places[i] =
          new double[] {
            point.xMetres() + JOG * extent * StrictMath.cos(turn),
            point.yMetres() + JOG * extent * StrictMath.sin(turn)
          };
    }
    return places;
  }

  /** Whether three points make a triangle with no other point inside its circumcircle. */
  private static boolean isEmpty(double[][] p, int a, int b, int c) {
    double turn = cross(p[a], p[b], p[c]);
    if (Math.abs(turn) < SLIVER * (square(p[a], p[b]) + square(p[b], p[c]) + square(p[c], p[a]))) {
      return false; // points in one line, but for the jog
    }
    for (int d = 0; d < p.length; d++) {
      if (d != a && d != b && d != c && inCircle(p[a], p[b], p[c], p[d]) * turn > 0) {
        return false;
      }
    }
    return true;
  }

  private static double square(double[] a, double[] b) {
    return (b[0] - a[0]) * (b[0] - a[0]) + (b[1] - a[1]) * (b[1] - a[1]);
  }

  private static double cross(double[] a, double[] b, double[] c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  }

  /** The determinant that is positive for d inside the circle through a, b, c counter-clockwise. */
  private static double inCircle(double[] a, double[] b, double[] c, double[] d) {
    double ax = a[0] - d[0];
    double ay = a[1] - d[1];
    double bx = b[0] - d[0];
    double by = b[1] - d[1];
    double cx = c[0] - d[0];
    double cy = c[1] - d[1];
    return (ax * ax + ay * ay) * (bx * cy - cx * by)
        - (bx * bx + by * by) * (ax * cy - cx * ay)
        + (cx * cx + cy * cy) * (ax * by - bx * ay);
  }
}
