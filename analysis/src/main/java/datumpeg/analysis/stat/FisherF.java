package datumpeg.analysis.stat;

import org.hipparchus.special.Beta;

/** Fisher's F distribution. Thread-safe. */
public final class FisherF {
  private FisherF() {}

  /**
   * Probability of a ratio above x, exact also far out in the tail; 1 for x of 0 or less, 0 for
   * infinity.
   */
  public static double survival(double x, double numeratorDegrees, double denominatorDegrees) {
    Probabilities.requireNumber("F", x);
    double above = Probabilities.requireDegrees("F", numeratorDegrees);
    double below = Probabilities.requireDegrees("F", denominatorDegrees);
    if (x <= 0 || Double.isInfinite(x)) {
      return x <= 0 ? 1 : 0;
    }
    return Beta.regularizedBeta(below / (below + above * x), below / 2, above / 2);
  }
}
