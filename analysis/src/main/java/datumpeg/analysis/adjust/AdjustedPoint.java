package datumpeg.analysis.adjust;

/**
 * An adjusted point in the datum frame with its covariance.
 *
 * @param covarianceSquareMetres of x and y
 */
public record AdjustedPoint(
    String name,
    double xMetres,
    double yMetres,
    double xStandardUncertaintyMetres,
    double yStandardUncertaintyMetres,
    double covarianceSquareMetres) {

  /**
   * Largest semi-axis of the standard error ellipse, in metres: the root of the larger eigenvalue.
   */
  public double largestSemiAxisMetres() {
    return largestSemiAxis(
        xStandardUncertaintyMetres * xStandardUncertaintyMetres,
        yStandardUncertaintyMetres * yStandardUncertaintyMetres,
        covarianceSquareMetres);
  }

  static double largestSemiAxis(double varianceX, double varianceY, double covariance) {
    double half = 0.5 * (varianceX - varianceY);
    return Math.sqrt(
        Math.max(
            0, 0.5 * (varianceX + varianceY) + Math.sqrt(half * half + covariance * covariance)));
  }
}
