package datumpeg.analysis.compare;

import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.TrendPoint;
import datumpeg.analysis.trend.TrendQuestion;
import datumpeg.analysis.trend.TrendSeries;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Makes comparisons, one after the other. One thread. */
public final class Comparer {
  private final JointQuantiles quantiles = new JointQuantiles();

  /**
   * Compares groups by one check.
   *
   * @param outcomes of any jobs and checks, each job's in the order of its work
   * @param question its points are per target, whatever it says
   * @param checksCompared how many checks are compared at one sitting: the more, the wider the
   *     intervals of differences (C. E. Bonferroni: error 0.05 divided by their number)
   */
  public Comparison compare(
      List<DatedOutcome> outcomes, TrendQuestion question, Factor factor, int checksCompared) {
    if (checksCompared < 1) {
      throw new IllegalArgumentException(
          "A comparison of " + checksCompared + " checks; expected at least 1.");
    }
    TrendSeries series =
        TrendSeries.of(
            outcomes,
            new TrendQuestion(
                question.filter(), question.rounds(), PointPer.TARGET, question.scale()));
    List<TrendPoint> single =
        series.points().stream().filter(point -> factor.levels(point.newest()).size() < 2).toList();
    List<ComparedGroup> groups = groups(single, factor);
    double joint = 1 - (1 - Comparison.CONFIDENCE) / checksCompared;
    List<Difference> differences = new Differences(groups, joint, quantiles).all();
    SpreadComparison spread = SpreadComparison.of(groups);
    return new Comparison(
        question,
        factor,
        series.unit(),
        Comparison.CONFIDENCE,
        joint,
        groups,
        series.points().size() - single.size(),
        differences,
        spread,
        new Conclusions(factor, series.unit(), groups, differences, spread, joint).sentences());
  }

  private static List<ComparedGroup> groups(List<TrendPoint> points, Factor factor) {
    Map<String, Map<String, List<TrendPoint>>> byName = new TreeMap<>();
    for (TrendPoint point : points) {
      List<String> levels = factor.levels(point.newest());
      byName
          .computeIfAbsent(levels.isEmpty() ? "" : levels.get(0), name -> new LinkedHashMap<>())
          .computeIfAbsent(point.newest().jobName(), job -> new ArrayList<>())
          .add(point);
    }
    List<ComparedGroup> groups = new ArrayList<>();
    byName.forEach((name, jobs) -> groups.add(group(name, jobs)));
    return groups;
  }

  private static ComparedGroup group(String name, Map<String, List<TrendPoint>> jobs) {
    List<JobValue> values = new ArrayList<>();
    jobs.forEach((job, points) -> values.add(JobValue.of(job, points)));
    return new ComparedGroup(name, values, Comparison.CONFIDENCE);
  }
}
