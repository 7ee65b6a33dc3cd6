package datumpeg.analysis.uncertainty;

import java.util.Set;

/**
 * Variances of one value by their {@link Origin}, in the square of the unit of the value. Parts of
 * different origin are independent, so that they add (JCGM 100:2008, eq. (10)).
 */
public record Budget(
    double scatter, double meter, double definition, double temperature, double other) {
  /** Of a value taken as exact. */
  public static final Budget NONE = new Budget(0, 0, 0, 0, 0);

  /** All of one origin. */
  public static Budget of(Origin origin, double standardUncertainty) {
    return ofVariance(origin, standardUncertainty * standardUncertainty);
  }

  static Budget ofVariance(Origin origin, double variance) {
    return switch (origin) {
      case SCATTER -> new Budget(variance, 0, 0, 0, 0);
      case METER -> new Budget(0, variance, 0, 0, 0);
      case DEFINITION -> new Budget(0, 0, variance, 0, 0);
      case TEMPERATURE -> new Budget(0, 0, 0, variance, 0);
      case OTHER -> new Budget(0, 0, 0, 0, variance);
    };
  }

  /** Of the sum of two independent values. */
  public Budget plus(Budget independent) {
    return new Budget(
        scatter + independent.scatter,
        meter + independent.meter,
        definition + independent.definition,
        temperature + independent.temperature,
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
        square * other);
  }

  /** Variance of one origin. */
  public double variance(Origin origin) {
    return switch (origin) {
      case SCATTER -> scatter;
      case METER -> meter;
      case DEFINITION -> definition;
      case TEMPERATURE -> temperature;
      case OTHER -> other;
    };
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
