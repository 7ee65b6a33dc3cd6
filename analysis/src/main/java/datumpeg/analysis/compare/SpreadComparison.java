package datumpeg.analysis.compare;

import datumpeg.analysis.stat.OneWayVariance;
import datumpeg.analysis.stat.SpreadTest;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Whether groups are equally spread, from job to job and within their jobs.
 *
 * @param betweenJobs Brown and Forsythe's test (distances from the median) of the jobs' means;
 *     probability of what is seen if the spreads were equal. Empty where too few jobs
 * @param withinJobs analysis of variance of the jobs' scatters, one number a job; likewise
 * @param betweenRange how far the groups' spreads of jobs are apart
 * @param withinRange how far the groups' scatters within jobs are apart
 * @param measurable differences up to this may be measuring alone: twice the greatest of the
 *     groups' ū/√n
 */
public record SpreadComparison(
    OptionalDouble betweenJobs,
    OptionalDouble withinJobs,
    double betweenRange,
    double withinRange,
    double measurable) {

  static SpreadComparison of(List<ComparedGroup> groups) {
    return new SpreadComparison(
        tested(groups.stream().map(ComparedGroup::means).toList())
            .map(values -> SpreadTest.of(values, SpreadTest.Centre.MEDIAN))
            .map(table -> OptionalDouble.of(table.probability()))
            .orElse(OptionalDouble.empty()),
        tested(groups.stream().map(ComparedGroup::scatters).toList())
            .map(OneWayVariance::of)
            .map(table -> OptionalDouble.of(table.probability()))
            .orElse(OptionalDouble.empty()),
        range(groups.stream().map(ComparedGroup::observedSpread)),
        range(groups.stream().map(ComparedGroup::meanScatter)),
        groups.stream()
            .mapToDouble(group -> 2 * group.measuringPart() / Math.sqrt(group.jobCount()))
            .max()
            .orElse(0));
  }

  private static double range(Stream<OptionalDouble> spreads) {
    DoubleSummaryStatistics all =
        spreads.flatMapToDouble(OptionalDouble::stream).summaryStatistics();
    return all.getCount() < 2 ? 0 : all.getMax() - all.getMin();
  }

  /**
   * The groups with three values or more, if there are two such: the distances of two values from
   * their median are equal whatever they are, and say nothing of spread.
   */
  private static Optional<List<List<Double>>> tested(List<List<Double>> groups) {
    List<List<Double>> large = groups.stream().filter(values -> values.size() > 2).toList();
    return large.size() < 2 ? Optional.empty() : Optional.of(large);
  }

  /**
   * Whether one of the two tests shows a difference, by S. Holm's method for two tests (1979), that
   * is more than measuring alone may give.
   */
  boolean isShown(double error) {
    boolean two = betweenJobs.isPresent() && withinJobs.isPresent();
    double level = two ? error / 2 : error;
    return (betweenJobs.orElse(1) <= level && betweenRange > measurable)
        || (withinJobs.orElse(1) <= level && withinRange > measurable);
  }
}
