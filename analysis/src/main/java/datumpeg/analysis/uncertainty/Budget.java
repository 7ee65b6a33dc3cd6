package datumpeg.analysis.uncertainty;

import datumpeg.analysis.stat.NormalPlusRectangular;
import java.util.Set;

/**
 * Variances of one value by their {@link Origin}, in the square of the unit of the value. Parts of
 * different origin are independent, so that they add (JCGM 100:2008, eq. (10)).
 *
 * @param formSquares sum of the squares of the variances of which {@code form} is the sum: of
 *     rectangular errors the fourth cumulant is −1.2 times that, and cumulants of independent
 *     errors add (M. G. Kendall and A. Stuart, The advanced theory of statistics, 3.12, recalled)
 */
public record Budget(
    double scatter,
    double meter,
    double definition,
    double temperature,
    double form,
    double formSquares,
    double other) {
  /** Of a value taken as exact. */
  public static final Budget NONE = new Budget(0, 0, 0, 0, 0, 0, 0);

  /** All of one origin. */
  public static Budget of(Origin origin, double standardUncertainty) {
    return ofVariance(origin, standardUncertainty * standardUncertainty);
  }

  static Budget ofVariance(Origin origin, double variance) {
    return switch (origin) {
      case SCATTER -> new Budget(variance, 0, 0, 0, 0, 0, 0);
      case METER -> new Budget(0, variance, 0, 0, 0, 0, 0);
      case DEFINITION -> new Budget(0, 0, variance, 0, 0, 0, 0);
      case TEMPERATURE -> new Budget(0, 0, 0, variance, 0, 0, 0);
      case FORM -> new Budget(0, 0, 0, 0, variance, variance * variance, 0);
      case OTHER -> new Budget(0, 0, 0, 0, 0, 0, variance);
    };
  }

  /**
   * Of several independent errors of one origin.
   *
   * @param variance sum of their variances
   * @param squares sum of the squares of their variances
   */
  static Budget ofErrors(Origin origin, double variance, double squares) {
    return origin == Origin.FORM
        ? new Budget(0, 0, 0, 0, variance, squares, 0)
        : ofVariance(origin, variance);
  }

  /** Of the sum of two independent values. */
  public Budget plus(Budget independent) {
    return new Budget(
        scatter + independent.scatter,
        meter + independent.meter,
        definition + independent.definition,
        temperature + independent.temperature,
        form + independent.form,
        formSquares + independent.formSquares,
        other + independent.other);
  }

  /** Of the value times an exact factor. */
  public Budget scaled(double factor) {
    double square = factor * factor;
    return new Budget(
        square * scatter,
        square * meter,
        square * definition,
        square * temperature,
        square * form,
        square * square * formSquares,
        square * other);
  }

  /** Variance of one origin. */
  public double variance(Origin origin) {
    return switch (origin) {
      case SCATTER -> scatter;
      case METER -> meter;
      case DEFINITION -> definition;
      case TEMPERATURE -> temperature;
      case FORM -> form;
      case OTHER -> other;
    };
  }

  /**
   * How the error is distributed, over its standard uncertainty: as a normal and one rectangular
   * error with this variance and this fourth cumulant together.
   */
  public NormalPlusRectangular distribution() {
    double variance = scatter + meter + definition + temperature + form + other;
    return new NormalPlusRectangular(
        variance > 0 ? Math.min(1, Math.sqrt(formSquares) / variance) : 0);
  }

  /** Standard uncertainty that would be left if the parts of some origins were gone. */
  public double standardUncertaintyWithout(Set<Origin> gone) {
    double sum = 0;
    for (Origin origin : Origin.values()) {
      sum += gone.contains(origin) ? 0 : variance(origin);
    }
    return Math.sqrt(sum);
  }
}
