package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The plane z = a + b x + c y with the least sum of squared vertical distances from a surface's
 * points. All points weigh the same: what they scatter by is the surface's own form, not the meter.
 * The heights' covariance is carried into the plane and the distances from it. Immutable.
 */
public final class BestPlane {
  /** Points nearer to one line than this share of their spread leave the plane free to swing. */
  private static final double COLLINEAR = 1e-10;

  private final List<SurfacePoint> points;
  private final double centreXMetres;
  private final double centreYMetres;
  private final Linearised centreHeight;
  private final Linearised slopeX;
  private final Linearised slopeY;

  private BestPlane(
      List<SurfacePoint> points,
      double centreXMetres,
      double centreYMetres,
      Linearised centreHeight,
      Linearised slopeX,
      Linearised slopeY) {
    this.points = points;
    this.centreXMetres = centreXMetres;
    this.centreYMetres = centreYMetres;
    this.centreHeight = centreHeight;
    this.slopeX = slopeX;
    this.slopeY = slopeY;
  }

  /** Fits; undetermined with fewer than three points or with all points on one line. */
  public static Adjustment<BestPlane> fit(List<SurfacePoint> given) {
    List<SurfacePoint> points = List.copyOf(given);
    double centreX = points.stream().mapToDouble(SurfacePoint::xMetres).average().orElse(0);
    double centreY = points.stream().mapToDouble(SurfacePoint::yMetres).average().orElse(0);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (SurfacePoint point : points) {
      double x = point.xMetres() - centreX;
      double y = point.yMetres() - centreY;
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
    double determinant = xx * yy - xy * xy;
    if (points.size() < 3 || determinant <= COLLINEAR * (xx + yy) * (xx + yy)) {
      return collinear(points);
    }
    Linearised mean = Linearised.mean(points.stream().map(SurfacePoint::height).toList());
    Linearised slopeX = mean.scaled(0);
    Linearised slopeY = mean.scaled(0);
    for (SurfacePoint point : points) {
      double x = point.xMetres() - centreX;
      double y = point.yMetres() - centreY;
      Linearised above = point.height().minus(mean);
      slopeX = slopeX.plus(above.scaled((yy * x - xy * y) / determinant));
      slopeY = slopeY.plus(above.scaled((xx * y - xy * x) / determinant));
    }
    return new Adjusted<>(new BestPlane(points, centreX, centreY, mean, slopeX, slopeY));
  }

  private static Adjustment<BestPlane> collinear(List<SurfacePoint> points) {
    List<String> names = new ArrayList<>(List.of("slope along x", "slope along y"));
    return new Undetermined<>(
        names,
        "a plane needs three points that do not lie on one line; there are " + points.size(),
        List.of(),
        Optional.empty());
  }

  /** The points, in the caller's order. */
  public List<SurfacePoint> points() {
    return points;
  }

  /** a: height of the plane at x = y = 0, in metres. */
  public Linearised intercept() {
    return heightAt(0, 0);
  }

  /** b: slope along x, rising positive, in metres per metre. */
  public Linearised slopeX() {
    return slopeX;
  }

  /** c: slope along y, rising positive, in metres per metre. */
  public Linearised slopeY() {
    return slopeY;
  }

  /** Slope along x in millimetres per metre. */
  public Estimate slopeXMillimetresPerMetre() {
    return slopeX.scaled(1000).estimate();
  }

  /** Slope along y in millimetres per metre. */
  public Estimate slopeYMillimetresPerMetre() {
    return slopeY.scaled(1000).estimate();
  }

  /** Height of the plane over a place in plan, in metres. */
  public Linearised heightAt(double xMetres, double yMetres) {
    return centreHeight
        .plus(slopeX.scaled(xMetres - centreXMetres))
        .plus(slopeY.scaled(yMetres - centreYMetres));
  }

  /** Height of a point above the plane, in metres. */
  public Linearised abovePlane(String point) {
    SurfacePoint found =
        points.stream()
            .filter(p -> p.name().equals(point))
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("best plane: there is no point " + point));
    return found.height().minus(heightAt(found.xMetres(), found.yMetres()));
  }

  /** The point farthest above the plane; the first of equals. */
  public SurfacePoint high() {
    return points.stream().reduce((a, b) -> above(b) > above(a) ? b : a).orElseThrow();
  }

  /** The point farthest below the plane; the first of equals. */
  public SurfacePoint low() {
    return points.stream().reduce((a, b) -> above(b) < above(a) ? b : a).orElseThrow();
  }

  private double above(SurfacePoint point) {
    return abovePlane(point.name()).value();
  }
}
