package datumpeg.bridge.exchange;

import datumpeg.analysis.compare.ComparedGroup;
import datumpeg.analysis.compare.Comparison;
import datumpeg.analysis.compare.JobValue;
import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TrendPoint;
import datumpeg.analysis.trend.TrendSeries;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Trends and comparisons as tables for other programs; numbers rounded half-even to 1e-6. */
public final class TrendTable {
  private TrendTable() {}

  /** One row a point, with what the chart makes of it; a signal stands at its last point. */
  public static WrittenTable of(
      TrendSeries series, Optional<ControlChart> chart, List<RunSignal> signals) {
    WrittenTable table =
        new WrittenTable(
            List.of(
                "number",
                "at",
                "job",
                "target",
                "stage",
                "round",
                "crew",
                "site",
                "slab_by",
                "meters",
                "outcomes",
                "unit",
                "value",
                "standard_uncertainty",
                "lower",
                "upper",
                "plotted",
                "control_lower",
                "control_upper",
                "signals"));
    List<String> said = said(series.points().size(), signals);
    for (int i = 0; i < series.points().size(); i++) {
      List<String> row = new ArrayList<>(List.of(Integer.toString(i + 1)));
      row.addAll(point(series.points().get(i), series.unit()));
      int index = i;
      row.add(chart.map(c -> number(c.plotted(index))).orElse(""));
      row.add(chart.map(c -> number(c.lower(index))).orElse(""));
      row.add(chart.map(c -> number(c.upper(index))).orElse(""));
      row.add(said.get(i));
      table.row(row);
    }
    return table;
  }

  private static List<String> said(int count, List<RunSignal> signals) {
    List<String> said = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      said.add("");
    }
    for (RunSignal signal : signals) {
      String before = said.get(signal.last());
      said.set(signal.last(), (before + " " + signal.sentence()).strip());
    }
    return said;
  }

  private static List<String> point(TrendPoint point, String unit) {
    DatedOutcome newest = point.newest();
    boolean single = point.outcomes().size() == 1;
    return List.of(
        newest.at().toString(),
        newest.jobName(),
        single ? newest.outcome().target() : "",
        single ? newest.stage() : "",
        single ? Integer.toString(newest.outcome().round()) : "",
        newest.job().crew(),
        newest.job().site(),
        newest.job().slabBy(),
        String.join(" ", newest.meters()),
        Integer.toString(point.outcomes().size()),
        unit,
        number(point.value()),
        number(point.standardUncertainty()),
        number(point.lower()),
        number(point.upper()));
  }

  /** One row a job of a group. */
  public static WrittenTable of(List<Comparison> comparisons) {
    WrittenTable table =
        new WrittenTable(
            List.of(
                "check",
                "by",
                "group",
                "job",
                "outcomes",
                "unit",
                "mean",
                "standard_uncertainty",
                "scatter"));
    for (Comparison comparison : comparisons) {
      for (ComparedGroup group : comparison.groups()) {
        for (JobValue job : group.jobs()) {
          table.row(
              List.of(
                  comparison.question().filter().check(),
                  comparison.factor().word(),
                  group.name(),
                  job.job(),
                  Integer.toString(job.values().size()),
                  comparison.unit(),
                  number(job.mean()),
                  number(job.standardUncertainty()),
                  number(job.scatter())));
        }
      }
    }
    return table;
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? number(value.getAsDouble()) : "";
  }

  private static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).setScale(6, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
