package datumpeg.analysis.conform;

import datumpeg.analysis.stat.Normal;
import datumpeg.analysis.stat.StudentizedRange;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Decides values, spreads and maxima by a job's rule, and says what would decide them.
 *
 * <p>A spread and a maximum are no ordinary values: see {@link Conformance#probabilityOfSpread} and
 * {@link Conformance#probabilityOfMaximum}. Each has one bound for accepting and a wider one for
 * rejecting, and so has its guard band. Thread-safe.
 */
public final class Decision {
  private static final double COVERED = 0.95;
  private static final int HALVINGS = 60;

  private final DecisionRule rule;

  /** How many standard uncertainties inside a limit accept. */
  private final double insideFactor;

  /** How many outside reject one value. */
  private final double rejectFactor;

  /** Solving for one takes as long as a small adjustment, and jobs ask for the same few. */
  private static final Map<Integer, Double> SPREAD_COVERAGES = new ConcurrentHashMap<>();

  /** Spreads of more values are solved for each time. */
  private static final int MOST_KEPT = 1000;

  public Decision(DecisionRule rule) {
    this.rule = rule;
    this.insideFactor =
        rule.guard()
            .map(band -> band.width(Estimate.COVERAGE_FACTOR))
            .orElseGet(() -> Normal.quantile(rule.accept()));
    this.rejectFactor = outsideFactor(Estimate.COVERAGE_FACTOR, -Normal.quantile(rule.reject()));
  }

  /**
   * What was decided.
   *
   * @param probability that it conforms
   */
  public record Decided(double probability, Verdict verdict) {}

  /** One value against its limits. */
  public Decided value(Estimate deviation, Limits limits) {
    double probability = Conformance.probabilityWithin(deviation, limits);
    return new Decided(
        probability,
        rule.guard()
            .map(band -> band.verdict(deviation, limits))
            .orElseGet(() -> rule.verdict(probability)));
  }

  /**
   * A spread of n values against its upper limit.
   *
   * @param u of one value, as {@link Conformance#probabilityOfSpread} asks
   */
  public Decided spread(double spread, double u, int n, Limits limits) {
    double limit = limits.upper().orElse(Double.POSITIVE_INFINITY);
    double probability = Conformance.probabilityOfSpread(spread, u, n, limit);
    return new Decided(
        probability,
        rule.guard()
            .map(
                band ->
                    GuardBand.zone(
                        spread,
                        limits.lower(),
                        limits.upper(),
                        band.width(Estimate.COVERAGE_FACTOR * Math.sqrt(2) * u),
                        band.width(spreadCoverage(n) * u)))
            .orElseGet(() -> rule.verdict(probability)));
  }

  /** The greatest of n absolute values against its upper limit. */
  public Decided maximum(double maximum, double u, int n, Limits limits) {
    double limit = limits.upper().orElse(Double.POSITIVE_INFINITY);
    double probability = Conformance.probabilityOfMaximum(maximum, u, n, limit);
    return new Decided(
        probability,
        rule.guard()
            .map(
                band ->
                    GuardBand.zone(
                        maximum,
                        limits.lower(),
                        limits.upper(),
                        band.width(Estimate.COVERAGE_FACTOR * u),
                        band.width(maximumCoverage(n) * u)))
            .orElseGet(() -> rule.verdict(probability)));
  }

  /** U / u of a spread of n values. */
  public double spreadCoverage(int n) {
    return n > MOST_KEPT
        ? StudentizedRange.quantile(COVERED, n)
        : SPREAD_COVERAGES.computeIfAbsent(n, values -> StudentizedRange.quantile(COVERED, values));
  }

  /** U / u of the greatest of n absolute values. */
  public static double maximumCoverage(int n) {
    return Conformance.maximumQuantile(COVERED, n);
  }

  /**
   * The greatest standard uncertainty at which an outcome like this one would be decided; 0 when it
   * sits on a limit.
   *
   * @throws java.util.NoSuchElementException if it has no limit, or a spread or maximum no upper
   *     one
   */
  public double needed(Outcome outcome, DecidedAs as) {
    Limits limits = outcome.limits().orElseThrow();
    double deviation = outcome.deviation();
    return switch (as) {
      case VALUE -> neededForValue(deviation, limits);
      case SPREAD -> neededForSpread(deviation, upper(limits), outcome.coverage());
      case MAXIMUM -> neededForMaximum(deviation, upper(limits), outcome.coverage());
    };
  }

  private static double upper(Limits limits) {
    return limits.upper().orElseThrow();
  }

  /** Whether any outcome as certain as this one could be found conforming. */
  public boolean canAccept(Outcome outcome, DecidedAs as) {
    Limits limits = outcome.limits().orElseThrow();
    return as == DecidedAs.SPREAD
        ? canAcceptSpread(outcome.standardUncertainty(), limits)
        : canAcceptValue(outcome.standardUncertainty(), limits);
  }

  /**
   * The greatest standard uncertainty at which a value like this one would be decided; 0 when it
   * sits on a limit.
   */
  public double neededForValue(double deviation, Limits limits) {
    double toUpper = limits.upper().orElse(Double.POSITIVE_INFINITY) - deviation;
    double toLower = deviation - limits.lower().orElse(Double.NEGATIVE_INFINITY);
    if (toUpper < 0 || toLower < 0) {
      double beyond = -Math.min(toUpper, toLower);
      return beyond / rejectFactor;
    }
    double one = Math.min(toUpper, toLower) / insideFactor;
    return Double.isInfinite(Math.max(toUpper, toLower)) ? one : bothWays(deviation, limits, one);
  }

  /** Between two limits both tails count, so it takes less than for the nearer limit alone. */
  private double bothWays(double deviation, Limits limits, double forTheNearer) {
    double low = 0;
    double high = forTheNearer;
    if (value(new Estimate(deviation, high), limits).verdict() == Verdict.CONFORMING) {
      return high;
    }
    for (int step = 0; step < HALVINGS; step++) {
      double middle = (low + high) / 2;
      if (value(new Estimate(deviation, middle), limits).verdict() == Verdict.CONFORMING) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /**
   * As {@link #neededForValue} for a spread, for the standard uncertainty of one of its values.
   *
   * @param coverage U / u of the spread
   */
  public double neededForSpread(double spread, double limit, double coverage) {
    return spread <= limit
        ? (limit - spread) / (Math.sqrt(2) * insideFactor)
        : (spread - limit) / outsideFactor(coverage, coverage);
  }

  /** As {@link #neededForSpread} for the greatest of some absolute values. */
  public double neededForMaximum(double maximum, double limit, double coverage) {
    return maximum <= limit
        ? (limit - maximum) / insideFactor
        : (maximum - limit) / outsideFactor(coverage, coverage);
  }

  /** How many outside reject. */
  private double outsideFactor(double coverage, double otherwise) {
    return rule.guard().map(band -> band.width(coverage)).orElse(otherwise);
  }

  /**
   * Whether any value at all could be found conforming with this uncertainty: false when the guard
   * bands meet, or when the tolerance is too narrow for the probability asked.
   */
  public boolean canAcceptValue(double u, Limits limits) {
    if (limits.lower().isEmpty() || limits.upper().isEmpty()) {
      return true;
    }
    double middle = (limits.lower().getAsDouble() + limits.upper().getAsDouble()) / 2;
    return value(new Estimate(middle, u), limits).verdict() == Verdict.CONFORMING;
  }

  /** As {@link #canAcceptValue} for a spread of values with this uncertainty each. */
  public boolean canAcceptSpread(double u, Limits limits) {
    return spread(0, u, 2, limits).verdict() == Verdict.CONFORMING;
  }
}
