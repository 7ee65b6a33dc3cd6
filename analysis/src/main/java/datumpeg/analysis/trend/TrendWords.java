package datumpeg.analysis.trend;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a series over jobs says, in sentences. */
public final class TrendWords {
  /** Limits from fewer points move much with each further one (common practice, no source). */
  private static final int SETTLED_POINTS = 20;

  private TrendWords() {}

  /** What the chart's lines are, whether chance explains the points, what was left out. */
  public static List<String> of(
      TrendSeries series, Optional<ControlChart> chart, List<RunSignal> signals, RunRules rules) {
    List<String> sentences = new ArrayList<>();
    if (series.points().isEmpty()) {
      sentences.add(
          "There is no point to show: no outcome of this check is among those asked for.");
    } else if (chart.isEmpty()) {
      sentences.add("One point gives no control limits: they need at least two.");
    } else {
      sentences.add(lines(chart.get(), series.unit()));
      sentences.add(verdict(signals, chart.get(), rules));
      cautions(series, chart.get(), sentences);
    }
    leftOut(series, sentences);
    return sentences;
  }

  private static String lines(ControlChart chart, String unit) {
    int last = chart.size() - 1;
    return "Centre line "
        + signed(chart.centre())
        + " "
        + unit
        + ", control limits "
        + signed(chart.lower(last))
        + " "
        + unit
        + " and "
        + signed(chart.upper(last))
        + " "
        + unit
        + (chart.isOfIndividuals()
            ? ""
            : ", for the moving average with weight " + LengthDisplay.decimal(chart.weight(), 2))
        + ": what this work usually gives, from "
        + (chart.baseline() == chart.size() ? "all " : "the first ")
        + chart.baseline()
        + " points; what is permitted is another matter.";
  }

  private static String verdict(List<RunSignal> signals, ControlChart chart, RunRules rules) {
    String by = chart.isOfIndividuals() ? rules.source() : RunRules.LIMITS_ONLY.source();
    if (signals.isEmpty()) {
      return "Nothing speaks against mere chance (" + by + ").";
    }
    return (signals.size() == 1 ? "One run speaks" : signals.size() + " runs speak")
        + " against mere chance ("
        + by
        + "): look for what changed there.";
  }

  private static void cautions(TrendSeries series, ControlChart chart, List<String> sentences) {
    if (chart.baseline() < SETTLED_POINTS) {
      sentences.add(
          "Limits from fewer than "
              + SETTLED_POINTS
              + " points are provisional (common practice, no source).");
    }
    if (series.question().per() == PointPer.TARGET && series.jobCount() < series.points().size()) {
      sentences.add(
          "Points of one job share its crew, day and meter, so that runs may only mean a change of"
              + " job; one point a job avoids that.");
    }
    long unlike =
        series.points().stream()
            .filter(point -> 2 * point.standardUncertainty() > chart.sigma())
            .count();
    if (unlike * 2 > series.points().size()) {
      sentences.add(
          "Most points are no better known than they vary (U above the chart's standard deviation):"
              + " much of what is seen is measuring.");
    }
  }

  private static void leftOut(TrendSeries series, List<String> sentences) {
    add(sentences, series.withoutLimit(), "without a limit to be scaled by");
    add(sentences, series.otherUnit(), "in another unit");
    add(sentences, series.stale(), "stale, not measured again since something moved");
  }

  private static void add(List<String> sentences, int count, String why) {
    if (count > 0) {
      sentences.add("Left out: " + count + (count == 1 ? " outcome, " : " outcomes, ") + why + ".");
    }
  }

  private static String signed(double value) {
    return LengthDisplay.signed(value, 1);
  }
}
