package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.check.PointEstimate;

/**
 * Where a corner should be and where it was found, both with A1 at the origin and the x axis along
 * side A.
 */
record CornerShift(String corner, PlanPoint design, PointEstimate found) {

  /**
   * Half axes of an ellipse that holds the point with 95 %, in standard deviations: for a bivariate
   * normal the probability inside is 1 − exp(−k²/2), so k = √(−2 ln 0.05) = 2.4477 (the 95 %
   * quantile of chi-square with two degrees of freedom is k² = 5.991; JCGM 102:2011, 6.5, gives
   * 2.45 for two quantities, clause from memory).
   */
  static final double ELLIPSE_COVERAGE = Math.sqrt(-2 * StrictMath.log(0.05));

  double alongMetres() {
    return found.xMetres() - design.xMetres();
  }

  double acrossMetres() {
    return found.yMetres() - design.yMetres();
  }

  double lengthMetres() {
    return StrictMath.hypot(alongMetres(), acrossMetres());
  }

  PlanPoint drawn(Exaggeration exaggeration) {
    return new PlanPoint(
        design.xMetres() + exaggeration.factor() * alongMetres(),
        design.yMetres() + exaggeration.factor() * acrossMetres());
  }

  /** The longer half axis of the 95 % ellipse. */
  double firstHalfMetres() {
    return ELLIPSE_COVERAGE * Math.sqrt(Math.max(0, middle() + radius()));
  }

  double secondHalfMetres() {
    return ELLIPSE_COVERAGE * Math.sqrt(Math.max(0, middle() - radius()));
  }

  /** From the x axis to the longer half axis, counter-clockwise in the plan. */
  double firstAxisRadians() {
    return StrictMath.atan2(2 * found.covariance(), found.xVariance() - found.yVariance()) / 2;
  }

  private double middle() {
    return (found.xVariance() + found.yVariance()) / 2;
  }

  private double radius() {
    return StrictMath.hypot((found.xVariance() - found.yVariance()) / 2, found.covariance());
  }
}
