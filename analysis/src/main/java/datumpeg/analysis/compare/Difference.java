package datumpeg.analysis.compare;

/**
 * How two groups differ, with an interval that holds for all pairs together.
 *
 * <p>Source: P. A. Games and J. F. Howell, Journal of Educational Statistics 1 (1976) 113-125: the
 * interval of Tukey's method for groups of unequal spread, q(1 − α; k, ν)/√2 · √(e₁² + e₂²) with
 * the groups' standard errors e and Welch's degrees of freedom ν (recalled, not looked up; the
 * tests hold it against scipy, against Welch's t interval for two groups, and against simulation).
 *
 * @param difference other − one, of the groups' means
 * @param halfWidth half the interval's width
 * @param degreesOfFreedom ν, rounded down
 */
public record Difference(
    String one, String other, double difference, double halfWidth, int degreesOfFreedom) {

  /** Whether the interval leaves 0 out. */
  public boolean isShown() {
    return Math.abs(difference) > halfWidth;
  }

  public double lower() {
    return difference - halfWidth;
  }

  public double upper() {
    return difference + halfWidth;
  }
}
