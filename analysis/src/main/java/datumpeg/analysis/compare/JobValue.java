package datumpeg.analysis.compare;

import datumpeg.analysis.stat.SpreadTest;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.TrendPoint;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What one job says of its group: its outcomes and their mean. Outcomes of one job share crew, day
 * and mostly meter, so that the job, not the outcome, is what is counted.
 *
 * @param job its name
 * @param outcomes what was found in it, with the values
 * @param values of the outcomes, in the comparison's unit
 * @param standardUncertainty of the mean, as if its outcomes shared their whole error
 */
public record JobValue(
    String job, List<DatedOutcome> outcomes, List<Double> values, double standardUncertainty) {
  public JobValue {
    outcomes = List.copyOf(outcomes);
    values = List.copyOf(values);
  }

  static JobValue of(String job, List<TrendPoint> points) {
    return new JobValue(
        job,
        points.stream().map(TrendPoint::newest).toList(),
        points.stream().map(TrendPoint::value).toList(),
        points.stream().mapToDouble(TrendPoint::standardUncertainty).average().orElseThrow());
  }

  public double mean() {
    return values.stream().mapToDouble(value -> value).average().orElseThrow();
  }

  /**
   * How far its outcomes are from their median on the average, corrected for how many there are, so
   * that jobs with few outcomes do not seem even: times √(m/(m − 1)). Empty for a single outcome.
   */
  public OptionalDouble scatter() {
    int count = values.size();
    if (count < 2) {
      return OptionalDouble.empty();
    }
    double mean =
        SpreadTest.distances(values, SpreadTest.Centre.MEDIAN).stream()
            .mapToDouble(distance -> distance)
            .average()
            .orElseThrow();
    return OptionalDouble.of(mean * Math.sqrt(count / (count - 1.0)));
  }
}
