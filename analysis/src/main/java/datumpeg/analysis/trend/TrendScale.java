package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import java.util.OptionalDouble;

/** What a series is measured in. */
public enum TrendScale {
  /** As outcomes are shown: millimetres, or the number of a floor's flatness. */
  AS_MEASURED,
  /**
   * Per cent of the permitted deviation, so that buildings with different limits compare: with
   * limits L and U, 100·(d − (L + U)/2)/((U − L)/2), so that ±100 are the limits; with an upper
   * limit alone 100·d/U. Where there is no upper limit above 0 there is no such number.
   */
  OF_PERMITTED;

  /** The unit of all numbers of an outcome on this scale. */
  public String unit(Outcome outcome) {
    return this == AS_MEASURED ? outcome.unit().symbol() : "%";
  }

  /** Whether the outcome has a number on this scale. */
  public boolean fits(Outcome outcome) {
    return this == AS_MEASURED || !Double.isNaN(half(outcome));
  }

  /** The deviation on this scale. */
  public double value(Outcome outcome) {
    return scaled(outcome, outcome.deviation());
  }

  /** The standard uncertainty on this scale. */
  public double standardUncertainty(Outcome outcome) {
    double own = outcome.standardUncertainty();
    return this == AS_MEASURED ? outcome.unit().fromSi(own) : 100 * own / half(outcome);
  }

  /** The least permitted deviation on this scale; empty where there is none. */
  public OptionalDouble lower(Outcome outcome) {
    return limit(outcome, outcome.limits().map(Limits::lower).orElse(OptionalDouble.empty()));
  }

  /** The greatest permitted deviation on this scale; empty where there is none. */
  public OptionalDouble upper(Outcome outcome) {
    return limit(outcome, outcome.limits().map(Limits::upper).orElse(OptionalDouble.empty()));
  }

  private OptionalDouble limit(Outcome outcome, OptionalDouble si) {
    return si.isEmpty() ? si : OptionalDouble.of(scaled(outcome, si.getAsDouble()));
  }

  private double scaled(Outcome outcome, double si) {
    return this == AS_MEASURED
        ? outcome.unit().fromSi(si)
        : 100 * (si - middle(outcome)) / half(outcome);
  }

  /** Half the width of the permitted range, in SI; not a number where there is no such range. */
  private static double half(Outcome outcome) {
    if (outcome.limits().isEmpty() || outcome.limits().get().upper().isEmpty()) {
      return Double.NaN;
    }
    Limits limits = outcome.limits().get();
    double upper = limits.upper().getAsDouble();
    double half = limits.lower().isPresent() ? (upper - limits.lower().getAsDouble()) / 2 : upper;
    return half > 0 ? half : Double.NaN;
  }

  private static double middle(Outcome outcome) {
    Limits limits = outcome.limits().orElseThrow();
    return limits.lower().isPresent()
        ? (limits.upper().orElseThrow() + limits.lower().getAsDouble()) / 2
        : 0;
  }
}
