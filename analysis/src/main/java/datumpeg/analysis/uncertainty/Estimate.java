package datumpeg.analysis.uncertainty;

import java.util.List;

/**
 * A measured value with its standard uncertainty, both in one unit the caller knows. Immutable.
 *
 * <p>{@code plus} and {@code minus} take the two as independent; for correlated quantities use
 * {@link Linearised}.
 *
 * @param value finite
 * @param standardUncertainty finite, not negative
 * @param budget the same uncertainty by its origins
 */
public record Estimate(double value, double standardUncertainty, Budget budget) {
  /**
   * The coverage factor used where none is stated, for a normal error: {@link #COVERAGE} (JCGM
   * 100:2008, 6.3.3).
   */
  public static final double COVERAGE_FACTOR = 2.0;

  /** Probability within twice the standard deviation of a normal error. */
  private static final double COVERAGE = 0.954499736;

  public Estimate {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          "estimate: value is " + value + ", expected a finite number");
    }
    if (!Double.isFinite(standardUncertainty) || standardUncertainty < 0) {
      throw new IllegalArgumentException(
          "estimate of "
              + value
              + ": standard uncertainty is "
              + standardUncertainty
              + ", expected a finite number of at least 0");
    }
  }

  /** A value of whose uncertainty no more is known than its size. */
  public Estimate(double value, double standardUncertainty) {
    this(value, standardUncertainty, Budget.of(Origin.OTHER, standardUncertainty));
  }

  /** A value taken as exact. */
  public static Estimate exact(double value) {
    return new Estimate(value, 0, Budget.NONE);
  }

  /** Root of the sum of squares of independent parts; 0 for none (JCGM 100:2008, eq. (10)). */
  public static double combine(double... independentStandardUncertainties) {
    double largest = 0;
    for (double part : independentStandardUncertainties) {
      if (!Double.isFinite(part) || part < 0) {
        throw new IllegalArgumentException(
            "combining standard uncertainties: a part is "
                + part
                + ", expected a finite number of at least 0");
      }
      largest = Math.max(largest, part);
    }
    if (largest == 0) {
      return 0;
    }
    double sum = 0;
    for (double part : independentStandardUncertainties) {
      sum += (part / largest) * (part / largest);
    }
    return largest * Math.sqrt(sum);
  }

  /** Sum of independent estimates; exactly 0 for none. */
  public static Estimate sum(List<Estimate> independent) {
    double value = 0;
    Budget budget = Budget.NONE;
    double[] parts = new double[independent.size()];
    for (int i = 0; i < parts.length; i++) {
      value += independent.get(i).value;
      parts[i] = independent.get(i).standardUncertainty;
      budget = budget.plus(independent.get(i).budget);
    }
    return new Estimate(value, combine(parts), budget);
  }

  /** Sum with an independent estimate. */
  public Estimate plus(Estimate independent) {
    return new Estimate(
        value + independent.value,
        combine(standardUncertainty, independent.standardUncertainty),
        budget.plus(independent.budget));
  }

  /** Difference from an independent estimate. */
  public Estimate minus(Estimate independent) {
    return plus(independent.scaled(-1));
  }

  /** Shifted by an exact amount. */
  public Estimate shifted(double exact) {
    return new Estimate(value + exact, standardUncertainty, budget);
  }

  /** Multiplied by an exact factor. */
  public Estimate scaled(double factor) {
    return new Estimate(
        value * factor, Math.abs(factor) * standardUncertainty, budget.scaled(factor));
  }

  /** The same value, less well known by one more independent part. */
  public Estimate widened(double independentStandardUncertainty, Origin origin) {
    return new Estimate(
        value,
        combine(standardUncertainty, independentStandardUncertainty),
        budget.plus(Budget.of(origin, independentStandardUncertainty)));
  }

  /**
   * The coverage factor that covers as much of this value's errors as {@link #COVERAGE_FACTOR} does
   * of normal ones: less where evenly distributed ones prevail (JCGM 100:2008, G.1.4 and G.2.2).
   */
  public double coverageFactor() {
    return budget.formSquares() == 0
        ? COVERAGE_FACTOR
        : budget.distribution().coverageFactor(COVERAGE);
  }

  /** Expanded uncertainty with {@link #coverageFactor()}. */
  public double expanded() {
    return expanded(coverageFactor());
  }

  /** Expanded uncertainty U = k u (JCGM 100:2008, eq. (18)). */
  public double expanded(double coverageFactor) {
    if (!Double.isFinite(coverageFactor) || coverageFactor <= 0) {
      throw new IllegalArgumentException(
          "expanded uncertainty: coverage factor is " + coverageFactor + ", expected above 0");
    }
    return coverageFactor * standardUncertainty;
  }
}
