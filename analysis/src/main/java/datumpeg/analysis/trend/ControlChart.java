package datumpeg.analysis.trend;

import java.util.Arrays;
import java.util.Optional;

/**
 * A control chart of single values: the values themselves, or their exponentially weighted moving
 * average. Its limits come from the values, not from any drawing: they say what this work usually
 * gives, permitted deviations say what is allowed.
 *
 * <p>Sources: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individuals: mean ± 3
 * MR̄/d2) and 6.3.2.4 (EWMA: z_t = λ·y_t + (1 − λ)·z_(t−1), limits ± 3σ·√(λ/(2 − λ)·(1 − (1 −
 * λ)^(2t)))). σ is MR̄/d2 in both, d2 = 2/√π for ranges of two (tables print 1.128).
 *
 * <p>Immutable.
 */
public final class ControlChart {
  /** Expected range of two standard normal values, 2/√π. */
  public static final double RANGE_OF_TWO = 2 / Math.sqrt(StrictMath.PI);

  /** D4 = 1 + 3·d3/d2 for ranges of two; d3² = 2 − 4/π. Tables print 3.267. */
  public static final double RANGE_LIMIT = 1 + 3 * Math.sqrt(2 - 4 / StrictMath.PI) / RANGE_OF_TWO;

  /** How far control limits lie from the centre line, in standard deviations. */
  public static final double LIMIT_SIGMAS = 3;

  /** The weight of the newest value unless another is asked for; the handbook gives 0.2 to 0.3. */
  public static final double USUAL_WEIGHT = 0.2;

  private final double[] values;
  private final double[] plotted;
  private final int baseline;
  private final double weight;
  private final double centre;
  private final double meanRange;

  private ControlChart(double[] values, int baseline, double weight) {
    this.values = values.clone();
    this.baseline = baseline;
    this.weight = weight;
    this.centre = Arrays.stream(values, 0, baseline).average().orElseThrow();
    double sum = 0;
    for (int i = 1; i < baseline; i++) {
      sum += Math.abs(values[i] - values[i - 1]);
    }
    this.meanRange = sum / (baseline - 1);
    this.plotted = new double[values.length];
    double average = centre;
    for (int i = 0; i < values.length; i++) {
      average = weight * values[i] + (1 - weight) * average;
      plotted[i] = average;
    }
  }

  /**
   * The chart of the values themselves.
   *
   * @param values finite, in the order of time
   * @param baseline how many of the first values the limits come from; 0 for all
   * @return empty if there are fewer than two values to take limits from
   */
  public static Optional<ControlChart> individuals(double[] values, int baseline) {
    return of(values, baseline, 1);
  }

  /**
   * The chart of their moving average, which shows small lasting shifts sooner. It begins at the
   * centre line.
   *
   * @param weight of the newest value, above 0 and at most 1
   */
  public static Optional<ControlChart> movingAverage(double[] values, int baseline, double weight) {
    return of(values, baseline, weight);
  }

  private static Optional<ControlChart> of(double[] values, int baseline, double weight) {
    if (!(weight > 0 && weight <= 1) || baseline < 0) {
      throw new IllegalArgumentException(
          "A control chart with weight "
              + weight
              + " and a baseline of "
              + baseline
              + " values; expected a weight above 0 and at most 1, and 0 values or more.");
    }
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("A control chart of " + value + " cannot be made.");
      }
    }
    int from = baseline == 0 ? values.length : Math.min(baseline, values.length);
    return from < 2 ? Optional.empty() : Optional.of(new ControlChart(values, from, weight));
  }

  public int size() {
    return values.length;
  }

  /** From how many values the limits come. */
  public int baseline() {
    return baseline;
  }

  /** The mean of the baseline. */
  public double centre() {
    return centre;
  }

  /** Standard deviation of single values, from the mean moving range of the baseline. */
  public double sigma() {
    return meanRange / RANGE_OF_TWO;
  }

  /** Whether single values are plotted, to which run rules may be applied. */
  public boolean isOfIndividuals() {
    return weight == 1;
  }

  public double weight() {
    return weight;
  }

  /** The value, or the moving average, at a place from 0. */
  public double plotted(int index) {
    return plotted[index];
  }

  public double lower(int index) {
    return centre - halfWidth(index);
  }

  public double upper(int index) {
    return centre + halfWidth(index);
  }

  /** Distance of the limits from the centre line; for an average it grows to a final width. */
  public double halfWidth(int index) {
    double settled = LIMIT_SIGMAS * sigma() * Math.sqrt(weight / (2 - weight));
    return settled * Math.sqrt(1 - StrictMath.pow(1 - weight, 2.0 * (index + 1)));
  }

  public double meanRange() {
    return meanRange;
  }

  /** What the moving range of two neighbouring values stays under, D4·MR̄. */
  public double rangeLimit() {
    return RANGE_LIMIT * meanRange;
  }

  /** How far a plotted value is from the centre line, in thirds of the way to its limit. */
  double sigmasOut(int index) {
    double from = plotted[index] - centre;
    double unit = halfWidth(index) / LIMIT_SIGMAS;
    if (unit == 0) {
      return from == 0 ? 0 : Math.copySign(Double.POSITIVE_INFINITY, from);
    }
    return from / unit;
  }
}
