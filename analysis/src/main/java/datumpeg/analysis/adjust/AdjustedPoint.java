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
    double covarianceSquareMetres) {}
