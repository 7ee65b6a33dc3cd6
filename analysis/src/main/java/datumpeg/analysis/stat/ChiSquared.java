package datumpeg.analysis.stat;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.special.Gamma;

/** The chi-squared distribution. Thread-safe. */
public final class ChiSquared {
  private ChiSquared() {}

  /** Probability of at most x; 0 for x of 0 or less. */
  public static double cdf(double x, double degreesOfFreedom) {
    Probabilities.requireNumber("chi-squared", x);
    double nu = Probabilities.requireDegrees("chi-squared", degreesOfFreedom);
    return x <= 0 ? 0 : Gamma.regularizedGammaP(nu / 2, x / 2);
  }

  /** Probability of more than x, exact also far out in the tail. */
  public static double survival(double x, double degreesOfFreedom) {
    Probabilities.requireNumber("chi-squared", x);
    double nu = Probabilities.requireDegrees("chi-squared", degreesOfFreedom);
    return x <= 0 ? 1 : Gamma.regularizedGammaQ(nu / 2, x / 2);
  }

  /** The x that is not exceeded with the given probability, which lies strictly between 0 and 1. */
  public static double quantile(double probability, double degreesOfFreedom) {
    Probabilities.requireInside("chi-squared", probability);
    Probabilities.requireDegrees("chi-squared", degreesOfFreedom);
    return new ChiSquaredDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
  }
}
