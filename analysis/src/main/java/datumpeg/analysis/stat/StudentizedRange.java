package datumpeg.analysis.stat;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.special.Gamma;

/**
 * Distribution of the range of n independent standard normal values, divided, where degrees of
 * freedom are given, by an independent estimate of their standard deviation. Thread-safe.
 *
 * <p>Source: H. L. Harter, Tables of range and studentized range, Annals of Mathematical Statistics
 * 31 (1960), the two integrals of its introduction (recalled, not looked up; checked in the tests
 * against closed forms for n = 2, simulation and published quantiles). Both are integrated by the
 * trapezoidal rule, which converges exponentially for a smooth integrand that dies out at both ends
 * (L. N. Trefethen and J. A. C. Weideman, SIAM Review 56, 2014, theorem 5.1). The tests find
 * absolute errors below 1e-13 for 2 to 400 values and, for two values, below 1e-11 with 1 to 5000
 * degrees of freedom.
 */
public final class StudentizedRange {
  /** Beyond this the normal density is under 2e-17 of its peak. */
  private static final double NORMAL_REACH = 8.8;

  /** A part of the integrand that lies below exp(-42) of its peak is left out. */
  private static final double NEGLIGIBLE_LOG = -42;

  private StudentizedRange() {}

  /** Probability that the range of n standard normal values is at most w; 0 for w of 0 or less. */
  public static double cdf(double w, int n) {
    requireArguments(w, n);
    return w <= 0 ? 0 : new RangeIntegral(n).cdf(w);
  }

  /** The range of n standard normal values that is not exceeded with the given probability. */
  public static double quantile(double probability, int n) {
    requireArguments(0, n);
    return solve(probability, new RangeIntegral(n)::cdf);
  }

  /**
   * Probability that the range of n standard normal values, divided by a standard deviation
   * estimated independently with the given degrees of freedom, is at most q.
   */
  public static double cdf(double q, int n, double degreesOfFreedom) {
    requireArguments(q, n);
    Probabilities.requireDegrees("studentized range", degreesOfFreedom);
    return q <= 0 ? 0 : averaged(q, new RangeIntegral(n), degreesOfFreedom);
  }

  /** The studentized range that is not exceeded with the given probability. */
  public static double quantile(double probability, int n, double degreesOfFreedom) {
    requireArguments(0, n);
    Probabilities.requireDegrees("studentized range", degreesOfFreedom);
    RangeIntegral range = new RangeIntegral(n);
    return solve(probability, q -> q <= 0 ? 0 : averaged(q, range, degreesOfFreedom));
  }

  /** Expected range of n standard normal values: the constant d2 of control charts. */
  public static double expectedRange(int n) {
    requireArguments(0, n);
    return new RangeIntegral(n).expectation();
  }

  /** Mean of F(q s) over the distribution of s = chi / sqrt(nu), integrated over t = ln s. */
  private static double averaged(double q, RangeIntegral range, double nu) {
    double step = Math.min(0.05, 0.4 / Math.sqrt(nu));
    double logPeak =
        0.5 * nu * StrictMath.log(nu / 2) + StrictMath.log(2) - Gamma.logGamma(nu / 2) - nu / 2;
    double sum = StrictMath.exp(logPeak) * range.cdf(q);
    for (int direction = -1; direction <= 1; direction += 2) {
      for (int i = 1; ; i++) {
        double t = direction * i * step;
        double logRelative = nu * (t - 0.5 * (StrictMath.exp(2 * t) - 1));
        double part = StrictMath.exp(logPeak + logRelative) * range.cdf(q * StrictMath.exp(t));
        sum += part;
        if (logRelative < NEGLIGIBLE_LOG || part < 1e-18 * sum) {
          break;
        }
      }
    }
    return Math.min(1, sum * step);
  }

  private static double solve(double probability, DoubleUnaryOperator cdf) {
    Probabilities.requireInside("studentized range", probability);
    double high = 4;
    while (cdf.applyAsDouble(high) < probability) {
      high *= 2;
    }
    return new BracketingNthOrderBrentSolver(1e-13, 1e-13, 1e-15, 5)
        .solve(200, x -> cdf.applyAsDouble(x) - probability, 0, high);
  }

  private static void requireArguments(double w, int n) {
    Probabilities.requireNumber("studentized range", w);
    if (n < 2) {
      throw new IllegalArgumentException(
          "studentized range: " + n + " values, expected at least 2");
    }
  }

  /** F(w) = n * integral of phi(z) (Phi(z) - Phi(z - w))^(n-1) dz, z being the largest value. */
  private static final class RangeIntegral {
    private final int n;
    private final double step;
    private final double[] nodes;
    private final double[] below;
    private final double[] density;

    RangeIntegral(int n) {
      this.n = n;
      this.step = Math.min(0.25, 0.7 / Math.sqrt(n));
      int half = (int) Math.ceil(NORMAL_REACH / step);
      this.nodes = new double[2 * half + 1];
      this.below = new double[nodes.length];
      this.density = new double[nodes.length];
      for (int i = 0; i < nodes.length; i++) {
        nodes[i] = (i - half) * step;
        below[i] = Normal.cdf(nodes[i]);
        density[i] = Normal.density(nodes[i]);
      }
    }

    double cdf(double w) {
      double sum = 0;
      for (int i = 0; i < nodes.length; i++) {
        double inside = below[i] - Normal.cdf(nodes[i] - w);
        sum += density[i] * power(inside, n - 1);
      }
      return Math.min(1, n * step * sum);
    }

    /** By squaring: n is whole, and a general power takes as long as all the rest. */
    private static double power(double base, int exponent) {
      double result = 1;
      double square = base;
      for (int left = exponent; left > 0; left >>= 1) {
        if ((left & 1) == 1) {
          result *= square;
        }
        square *= square;
      }
      return result;
    }

    /** Integral of 1 - Phi^n - (1 - Phi)^n (L. H. C. Tippett, Biometrika 17, 1925). */
    double expectation() {
      double sum = 0;
      for (double phi : below) {
        sum += 1 - StrictMath.pow(phi, n) - StrictMath.pow(1 - phi, n);
      }
      return sum * step;
    }
  }
}
