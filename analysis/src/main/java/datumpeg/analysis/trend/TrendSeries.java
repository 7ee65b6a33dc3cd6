package datumpeg.analysis.trend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One check over jobs, in the order of time.
 *
 * @param unit of all numbers; empty if there are no points
 * @param points the earliest first
 * @param withoutLimit outcomes left out because the scale needs a limit that they have not
 * @param otherUnit outcomes left out because they are in another unit than the first
 * @param stale targets left out because all that is known of them is stale
 */
public record TrendSeries(
    TrendQuestion question,
    String unit,
    List<TrendPoint> points,
    int withoutLimit,
    int otherUnit,
    int stale) {
  private static final Comparator<DatedOutcome> BY_TIME =
      Comparator.comparing(DatedOutcome::at)
          .thenComparing(DatedOutcome::jobName)
          .thenComparing(one -> one.outcome().target());

  public TrendSeries {
    points = List.copyOf(points);
  }

  private record Place(String job, String check, String target) {}

  /**
   * The series.
   *
   * @param outcomes of any jobs and checks, each job's in the order of its work
   */
  public static TrendSeries of(List<DatedOutcome> outcomes, TrendQuestion question) {
    List<DatedOutcome> speaking = speaking(outcomes, question);
    int places = places(outcomes, question.filter());
    TrendScale scale = question.scale();
    List<DatedOutcome> scaled =
        speaking.stream().filter(one -> scale.fits(one.outcome())).sorted(BY_TIME).toList();
    String unit = scaled.isEmpty() ? "" : scale.unit(scaled.get(0).outcome());
    List<DatedOutcome> alike =
        scaled.stream().filter(one -> scale.unit(one.outcome()).equals(unit)).toList();
    return new TrendSeries(
        question,
        unit,
        points(alike, question),
        speaking.size() - scaled.size(),
        scaled.size() - alike.size(),
        places - speaking.size());
  }

  private static int places(List<DatedOutcome> outcomes, TrendFilter filter) {
    return (int)
        outcomes.stream().filter(filter::passes).map(TrendSeries::place).distinct().count();
  }

  private static Place place(DatedOutcome one) {
    return new Place(one.jobName(), one.outcome().check(), one.outcome().target());
  }

  /** Of each target of each job the outcome that speaks for it. */
  private static List<DatedOutcome> speaking(List<DatedOutcome> outcomes, TrendQuestion question) {
    Map<Place, DatedOutcome> chosen = new LinkedHashMap<>();
    for (DatedOutcome one : outcomes) {
      if (!question.filter().passes(one)) {
        continue;
      }
      if (question.rounds() == RoundChoice.FIRST) {
        chosen.putIfAbsent(place(one), one);
      } else if (!one.outcome().stale()) {
        chosen.put(place(one), one);
      }
    }
    return new ArrayList<>(chosen.values());
  }

  private static List<TrendPoint> points(List<DatedOutcome> inTime, TrendQuestion question) {
    if (question.per() == PointPer.TARGET) {
      return inTime.stream().map(one -> TrendPoint.of(List.of(one), question.scale())).toList();
    }
    Map<String, List<DatedOutcome>> jobs = new LinkedHashMap<>();
    inTime.forEach(one -> jobs.computeIfAbsent(one.jobName(), j -> new ArrayList<>()).add(one));
    return jobs.values().stream().map(job -> TrendPoint.of(job, question.scale())).toList();
  }

  /** The values, in order. */
  public double[] values() {
    return points.stream().mapToDouble(TrendPoint::value).toArray();
  }

  /** How many jobs it is made of. */
  public int jobCount() {
    return (int) points.stream().map(point -> point.newest().jobName()).distinct().count();
  }
}
