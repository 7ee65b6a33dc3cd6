package datumpeg.bridge.cli;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.RoundChange;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.RunRules;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TargetTrend;
import datumpeg.analysis.trend.TrendPoint;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.analysis.trend.TrendSeries;
import datumpeg.analysis.trend.TrendWords;
import datumpeg.bridge.jobs.StoredJob;
import java.io.PrintStream;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Trends in plain text. */
final class TrendPrinter {
  private final PrintStream out;

  TrendPrinter(PrintStream out) {
    this.out = out;
  }

  void ofJob(StoredJob stored, List<TargetTrend> trends) {
    out.printf("%s (%s)%n", stored.job().identity().name(), stored.key());
    if (trends.isEmpty()) {
      out.println("No outcome of this job is asked for.");
    }
    for (TargetTrend trend : trends) {
      out.println();
      out.println(trend.check() + " " + trend.target());
      TextTable table = TextTable.ofWords();
      for (int i = 0; i < trend.steps().size(); i++) {
        table.row(step(trend, i));
      }
      table.print(out, "  ");
    }
  }

  private static List<String> step(TargetTrend trend, int index) {
    DatedOutcome step = trend.steps().get(index);
    Outcome outcome = step.outcome();
    OutcomeUnit unit = outcome.unit();
    return List.of(
        step.stage(),
        "round " + outcome.round(),
        signed(unit.fromSi(outcome.deviation()))
            + " ±"
            + plain(unit.fromSi(outcome.expandedUncertainty()))
            + " "
            + unit.symbol(),
        outcome.stale() ? "stale" : outcome.verdict().map(Choice::word).orElse("no limit"),
        index == 0 ? "" : change(trend.changes().get(index - 1), unit));
  }

  private static String change(RoundChange change, OutcomeUnit unit) {
    return "changed by "
        + signed(unit.fromSi(change.change()))
        + " ±"
        + plain(unit.fromSi(change.expandedUncertainty()))
        + " "
        + unit.symbol()
        + (change.moved() ? ": moved" : ": within its uncertainty");
  }

  void overJobs(
      TrendSeries series,
      Optional<ControlChart> chart,
      List<RunSignal> signals,
      RunRules rules,
      List<String> unread) {
    boolean first = series.question().rounds() == RoundChoice.FIRST;
    out.printf(
        "%s, %s, %d point(s) from %d job(s)%s%n",
        series.question().filter().check(),
        first ? "first round (the process)" : "last round (as delivered)",
        series.points().size(),
        series.jobCount(),
        series.question().scale() == TrendScale.OF_PERMITTED
            ? ", in % of the permitted deviation"
            : "");
    points(series, chart);
    TrendWords.of(series, chart, signals, rules).forEach(out::println);
    signals.forEach(signal -> out.println("  " + signal.sentence()));
    unread.forEach(out::println);
  }

  private void points(TrendSeries series, Optional<ControlChart> chart) {
    if (series.points().isEmpty()) {
      return;
    }
    TextTable table =
        TextTable.ofWords()
            .row("", "day", "what", "crew", "value ±U (k = 2)", "permitted", "plotted");
    for (int i = 0; i < series.points().size(); i++) {
      table.row(point(series, chart, i));
    }
    table.print(out, "  ");
  }

  private static List<String> point(TrendSeries series, Optional<ControlChart> chart, int index) {
    TrendPoint point = series.points().get(index);
    List<String> cells = new ArrayList<>();
    cells.add(Integer.toString(index + 1));
    cells.add(point.newest().at().atZone(ZoneOffset.UTC).toLocalDate().toString());
    cells.add(point.name());
    cells.add(point.newest().job().crew());
    cells.add(
        signed(point.value())
            + " ±"
            + plain(2 * point.standardUncertainty())
            + " "
            + series.unit());
    cells.add(permitted(point));
    cells.add(chart.map(found -> plotted(found, index)).orElse(""));
    return cells;
  }

  private static String plotted(ControlChart chart, int index) {
    double value = chart.plotted(index);
    String mark =
        value > chart.upper(index) ? " above" : value < chart.lower(index) ? " below" : "";
    return signed(value) + mark;
  }

  private static String permitted(TrendPoint point) {
    String lower = number(point.lower());
    String upper = number(point.upper());
    if (lower.isEmpty() && upper.isEmpty()) {
      return "";
    }
    return (lower.isEmpty() ? "" : lower + " ") + "… " + upper;
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? signed(value.getAsDouble()) : "";
  }

  private static String signed(double value) {
    return LengthDisplay.signed(value, 1);
  }

  private static String plain(double value) {
    return LengthDisplay.decimal(value, 1);
  }
}
