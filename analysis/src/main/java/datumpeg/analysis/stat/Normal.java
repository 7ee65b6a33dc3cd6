package datumpeg.analysis.stat;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** The standard normal distribution. Thread-safe. */
public final class Normal {
  private static final NormalDistribution STANDARD = new NormalDistribution(0, 1);

  private Normal() {}

  /** Probability of at most z; 0 and 1 at the infinities. */
  public static double cdf(double z) {
    Probabilities.requireNumber("normal", z);
    return z < 0 ? NormalTail.above(-z) : 1 - NormalTail.above(z);
  }

  /** Density at z. */
  public static double density(double z) {
    Probabilities.requireNumber("normal", z);
    return StrictMath.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  }

  /** The z that is not exceeded with the given probability, which lies strictly between 0 and 1. */
  public static double quantile(double probability) {
    return STANDARD.inverseCumulativeProbability(
        Probabilities.requireInside("normal", probability));
  }

  /** Probability of a value at least as far from 0 as z, on either side. */
  public static double twoSided(double z) {
    return 2 * cdf(-Math.abs(z));
  }
}
