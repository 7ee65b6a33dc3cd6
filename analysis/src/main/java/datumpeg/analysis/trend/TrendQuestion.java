package datumpeg.analysis.trend;

/** What is asked of the outcomes of many jobs. */
public record TrendQuestion(
    TrendFilter filter, RoundChoice rounds, PointPer per, TrendScale scale) {

  /** First rounds of all outcomes of a check, one point a target, as measured. */
  public static TrendQuestion of(String check) {
    return new TrendQuestion(
        TrendFilter.of(check), RoundChoice.FIRST, PointPer.TARGET, TrendScale.AS_MEASURED);
  }
}
