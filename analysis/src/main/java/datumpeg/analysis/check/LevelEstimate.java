package datumpeg.analysis.check;

/**
 * A point's level against the mean of the points taken with it; up is positive.
 *
 * @param xMetres where it stands in the plan
 * @param yMetres where it stands in the plan
 */
public record LevelEstimate(
    double xMetres, double yMetres, double levelMetres, double standardUncertaintyMetres) {}
