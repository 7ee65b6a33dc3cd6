package datumpeg.analysis.check;

/**
 * Where a point was found to be; metres and square metres.
 *
 * @param xMetres along side A
 * @param yMetres toward side B
 * @param xVariance variance of x
 * @param yVariance variance of y
 * @param covariance of x and y
 */
public record PointEstimate(
    double xMetres, double yMetres, double xVariance, double yVariance, double covariance) {}
