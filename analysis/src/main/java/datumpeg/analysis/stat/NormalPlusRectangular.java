package datumpeg.analysis.stat;

/**
 * Sum of a normal and an independent rectangular error, of mean 0 and variance 1 together. Its
 * tails are shorter than the normal one's: twice the standard deviation either side covers all of a
 * rectangular error. Thread-safe.
 *
 * <p>With σ² = 1 − s, half-width a = √(3 s) and ψ(x) = x·Φ(x) + φ(x), the integral of Φ: F(z) =
 * σ/(2a)·(ψ((z + a)/σ) − ψ((z − a)/σ)), by convolution.
 */
public final class NormalPlusRectangular {
  /** The normal distribution itself: what the rectangular part adds is below a double's digits. */
  private static final double LEAST_SHARE = 1e-6;

  /** Above, the normal part is too small to be told from none. */
  private static final double GREATEST_SHARE = 1 - 1e-9;

  private static final int STEPS = 40;

  /** Newton's method doubles the digits: a step that moves less is followed by none. */
  private static final double TOLERANCE = 1e-10;

  private final double share;
  private final double sigma;
  private final double halfWidth;

  /**
   * @param rectangularShare of the variance, 0 to 1
   */
  public NormalPlusRectangular(double rectangularShare) {
    if (!(rectangularShare >= 0 && rectangularShare <= 1)) {
      throw new IllegalArgumentException(
          "normal plus rectangular: share is " + rectangularShare + ", expected 0 to 1");
    }
    this.share = rectangularShare;
    this.sigma = Math.sqrt(1 - rectangularShare);
    this.halfWidth = Math.sqrt(3 * rectangularShare);
  }

  /** Probability of at most z; 0 and 1 at the infinities. */
  public double cdf(double z) {
    if (share < LEAST_SHARE || Double.isInfinite(z)) {
      return Normal.cdf(z);
    }
    if (share > GREATEST_SHARE) {
      return Math.min(1, Math.max(0, (z + halfWidth) / (2 * halfWidth)));
    }
    double all = integral((z + halfWidth) / sigma) - integral((z - halfWidth) / sigma);
    return Math.min(1, Math.max(0, sigma * all / (2 * halfWidth)));
  }

  /** ψ, whose derivative is Φ. */
  private static double integral(double x) {
    return x * Normal.cdf(x) + Normal.density(x);
  }

  /**
   * The k for which the error lies within ±k with the given probability, strictly between 0 and 1.
   * By Newton's method, kept between bounds by halving.
   */
  public double coverageFactor(double probability) {
    double target = (1 + Probabilities.requireInside("normal plus rectangular", probability)) / 2;
    if (share > GREATEST_SHARE) {
      return halfWidth * probability;
    }
    double low = 0;
    double high = Normal.quantile(target) + halfWidth;
    double k = Normal.quantile(target);
    for (int step = 0; share >= LEAST_SHARE && step < STEPS; step++) {
      double far = (k + halfWidth) / sigma;
      double near = (k - halfWidth) / sigma;
      double density = (Normal.cdf(far) - Normal.cdf(near)) / (2 * halfWidth);
      double excess = cdf(k) - target;
      if (excess > 0) {
        high = k;
      } else {
        low = k;
      }
      double next = k - excess / density;
      if (!(next > low && next < high)) {
        next = (low + high) / 2;
      }
      if (Math.abs(next - k) < TOLERANCE) {
        return next;
      }
      k = next;
    }
    return k;
  }
}
