package datumpeg.analysis.conform;

import datumpeg.analysis.stat.Normal;
import datumpeg.analysis.stat.NormalPlusRectangular;
import datumpeg.analysis.stat.StudentizedRange;
import datumpeg.analysis.uncertainty.Estimate;

/** Probabilities that a true value lies within its limits, given what was measured. */
public final class Conformance {
  private Conformance() {}

  /**
   * p = F((T_U − y)/u) − F((T_L − y)/u), with F taken as 1 or 0 where a limit is absent (JCGM
   * 106:2012, 7.3 and 7.4). F is Φ, or with a member's bow in the value its own distribution: see
   * {@link datumpeg.analysis.uncertainty.Budget#distribution}. With u = 0 it is 1 on or inside the
   * limits, else 0.
   */
  public static double probabilityWithin(Estimate deviation, Limits limits) {
    double u = deviation.standardUncertainty();
    double y = deviation.value();
    double lower = limits.lower().orElse(Double.NEGATIVE_INFINITY);
    double upper = limits.upper().orElse(Double.POSITIVE_INFINITY);
    if (u == 0) {
      return y >= lower && y <= upper ? 1 : 0;
    }
    NormalPlusRectangular errors = deviation.budget().distribution();
    double below = Double.isInfinite(upper) ? 1 : errors.cdf((upper - y) / u);
    double beneath = Double.isInfinite(lower) ? 0 : errors.cdf((lower - y) / u);
    return Math.max(0, below - beneath);
  }

  /**
   * A bound on the probability that the true spread of n points is at most the limit, whatever the
   * true levels are.
   *
   * <p>The observed spread is at least the observed difference of the two truly extreme points, so
   * accepting below limit − z·√2·u accepts wrongly in at most Φ(−z). It exceeds the true spread by
   * at most the range of the n errors, so rejecting above limit + w·u rejects wrongly in at most 1
   * − F(w; n), F being the distribution of the range of n standard normals. The two meet at ½.
   *
   * @param spread observed, not negative
   * @param standardUncertainty of one point; for correlated points the greatest standard
   *     uncertainty of a difference of two, divided by √2
   * @param n number of points, at least 2
   * @param limit greatest permitted spread
   */
  public static double probabilityOfSpread(
      double spread, double standardUncertainty, int n, double limit) {
    if (standardUncertainty == 0) {
      return spread <= limit ? 1 : 0;
    }
    if (spread <= limit) {
      return Normal.cdf((limit - spread) / (Math.sqrt(2) * standardUncertainty));
    }
    double exceeded = (spread - limit) / standardUncertainty;
    return Math.min(0.5, 1 - StudentizedRange.cdf(exceeded, n));
  }

  /**
   * A bound on the probability that the greatest true absolute value of n is at most the limit,
   * whatever the true values are.
   *
   * <p>The greatest observed one is at least that of the truly greatest point, known to u, so
   * accepting below limit − z·u accepts wrongly in at most Φ(−z). It exceeds the true one by at
   * most the greatest absolute error of n, so rejecting above limit + w·u rejects wrongly in at
   * most 1 − (2Φ(w) − 1)ⁿ, which holds for errors correlated in any way (Z. Šidák, Rectangular
   * confidence regions for the means of multivariate normal distributions, J. Am. Stat. Assoc. 62,
   * 1967; recalled, not looked up). The two meet at ½.
   *
   * @param maximum greatest absolute value observed
   * @param standardUncertainty of one value, the greatest of them
   * @param n number of values, at least 1
   * @param limit greatest permitted
   */
  public static double probabilityOfMaximum(
      double maximum, double standardUncertainty, int n, double limit) {
    if (standardUncertainty == 0) {
      return maximum <= limit ? 1 : 0;
    }
    double below = (limit - maximum) / standardUncertainty;
    return below >= 0
        ? Normal.cdf(below)
        : Math.min(0.5, 1 - StrictMath.pow(1 - Normal.twoSided(below), n));
  }

  /** The greatest of n absolute standard normal values that is not exceeded with a probability. */
  public static double maximumQuantile(double probability, int n) {
    return Normal.quantile((1 + StrictMath.pow(probability, 1.0 / n)) / 2);
  }
}
