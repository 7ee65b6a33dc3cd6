package datumpeg.analysis.adjust;

import datumpeg.analysis.stat.ChiSquared;

/**
 * Do the observations agree with each other as well as their stated accuracy says? The square sum
 * of the weighted residuals v'Pv is chi-squared distributed if they do.
 *
 * @param squareSum v'Pv, without unit
 * @param degreesOfFreedom observations less unknowns, at least 1
 */
public record GlobalTest(double squareSum, int degreesOfFreedom) {
  /** Variance factor s0^2 = v'Pv / (n - u); expected 1. Covariances are never scaled by it. */
  public double varianceFactor() {
    return squareSum / degreesOfFreedom;
  }

  /** Probability of at least this square sum if the stated accuracy holds and nothing slipped. */
  public double probability() {
    return ChiSquared.survival(squareSum, degreesOfFreedom);
  }

  /** Whether the observations agree at the given significance, for example 0.05. */
  public boolean agrees(double significance) {
    return probability() >= significance;
  }
}
