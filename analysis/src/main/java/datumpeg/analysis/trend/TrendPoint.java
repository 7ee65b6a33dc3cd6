package datumpeg.analysis.trend;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One point of a series, in the series' unit.
 *
 * @param outcomes what it stands for: one, or all of a job
 * @param standardUncertainty of the value; for a mean that of its outcomes on the average, as if
 *     they shared their whole error, which is the most it can be
 * @param lower least permitted deviation; empty for a mean, for which nothing is permitted
 * @param upper greatest permitted deviation; likewise
 */
public record TrendPoint(
    List<DatedOutcome> outcomes,
    double value,
    double standardUncertainty,
    OptionalDouble lower,
    OptionalDouble upper) {
  public TrendPoint {
    outcomes = List.copyOf(outcomes);
  }

  static TrendPoint of(List<DatedOutcome> outcomes, TrendScale scale) {
    boolean single = outcomes.size() == 1;
    DatedOutcome first = outcomes.get(0);
    return new TrendPoint(
        outcomes,
        outcomes.stream().mapToDouble(one -> scale.value(one.outcome())).average().orElseThrow(),
        outcomes.stream()
            .mapToDouble(one -> scale.standardUncertainty(one.outcome()))
            .average()
            .orElseThrow(),
        single ? scale.lower(first.outcome()) : OptionalDouble.empty(),
        single ? scale.upper(first.outcome()) : OptionalDouble.empty());
  }

  /** The newest of its outcomes. */
  public DatedOutcome newest() {
    return outcomes.get(outcomes.size() - 1);
  }

  /** What it is, such as larkrise-01 A3/across, or the job alone for a mean. */
  public String name() {
    return outcomes.size() == 1
        ? newest().jobName() + " " + newest().outcome().target()
        : newest().jobName();
  }
}
