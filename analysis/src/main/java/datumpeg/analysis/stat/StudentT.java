package datumpeg.analysis.stat;

import org.hipparchus.distribution.continuous.TDistribution;

/** Student's t distribution. Thread-safe. */
public final class StudentT {
  private StudentT() {}

  /** Probability of at most t. */
  public static double cdf(double t, double degreesOfFreedom) {
    Probabilities.requireNumber("Student's t", t);
    return of(degreesOfFreedom).cumulativeProbability(t);
  }

  /** The t that is not exceeded with the given probability, which lies strictly between 0 and 1. */
  public static double quantile(double probability, double degreesOfFreedom) {
    Probabilities.requireInside("Student's t", probability);
    return of(degreesOfFreedom).inverseCumulativeProbability(probability);
  }

  private static TDistribution of(double degreesOfFreedom) {
    return new TDistribution(Probabilities.requireDegrees("Student's t", degreesOfFreedom));
  }
}
