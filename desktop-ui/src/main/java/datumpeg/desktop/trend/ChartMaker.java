package datumpeg.desktop.trend;

import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TrendPoint;
import datumpeg.analysis.trend.TrendSeries;
import datumpeg.desktop.chart.ChartLabels;
import datumpeg.desktop.chart.ChartPoints;
import datumpeg.desktop.chart.Mark;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes points and words of a series over jobs, in the user's units. */
final class ChartMaker {
  private static final double COVERAGE = 2;

  private final Words words;
  private final TrendSeries series;
  private final Optional<ControlChart> chart;
  private final List<RunSignal> signals;
  private final double factor;
  private final String unit;

  ChartMaker(
      Words words, TrendSeries series, Optional<ControlChart> chart, List<RunSignal> signals) {
    this.words = words;
    this.series = series;
    this.chart = chart;
    this.signals = signals;
    OutcomeUnit millimetre = OutcomeUnit.MILLIMETRE;
    boolean length = series.unit().equals(millimetre.symbol());
    this.factor = length ? words.figures().shown(millimetre, 0.001) : 1;
    this.unit = length ? words.figures().symbol(millimetre) : series.unit();
  }

  ChartPoints points() {
    List<TrendPoint> points = series.points();
    Mark[] marks = marks();
    ChartPoints.Builder builder =
        ChartPoints.of(
                points.size(),
                i -> factor * chart.map(c -> c.plotted(i)).orElse(points.get(i).value()))
            .permitted(i -> shown(points.get(i).lower()), i -> shown(points.get(i).upper()))
            .marks(i -> marks[i]);
    if (chart.map(ControlChart::isOfIndividuals).orElse(true)) {
      builder.bars(i -> factor * COVERAGE * points.get(i).standardUncertainty());
    }
    chart.ifPresent(
        c ->
            builder.control(
                factor * c.centre(), i -> factor * c.lower(i), i -> factor * c.upper(i)));
    return builder.build();
  }

  private Mark[] marks() {
    Mark[] marks = new Mark[series.points().size()];
    java.util.Arrays.fill(marks, Mark.PLAIN);
    for (RunSignal signal : signals) {
      boolean single = signal.first() == signal.last();
      for (int i = signal.first(); i <= signal.last(); i++) {
        if (single || marks[i] == Mark.PLAIN) {
          marks[i] = single ? Mark.BEYOND : Mark.IN_A_RUN;
        }
      }
    }
    return marks;
  }

  private double shown(OptionalDouble value) {
    return value.isPresent() ? factor * value.getAsDouble() : Double.NaN;
  }

  ChartLabels labels() {
    return new ChartLabels(
        unit,
        words.text("trend.control-limit"),
        words.text("trend.centre"),
        words.text("trend.permitted"),
        this::day,
        this::told);
  }

  private String day(int index) {
    return series.points().get(index).newest().at().atZone(ZoneOffset.UTC).toLocalDate().toString();
  }

  private String told(int index) {
    TrendPoint point = series.points().get(index);
    DatedOutcome newest = point.newest();
    String told =
        words.text(
            "trend.point",
            index + 1,
            point.name(),
            day(index),
            Figures.signed(factor * point.value(), unit),
            Figures.signed(factor * COVERAGE * point.standardUncertainty(), unit).replace("+", ""),
            unit,
            words.stage(newest.stage()),
            newest.job().crew(),
            String.join(" ", newest.meters()));
    return told + place(index) + runs(index);
  }

  private String place(int index) {
    if (chart.isEmpty()) {
      return "";
    }
    ControlChart c = chart.get();
    String where =
        c.plotted(index) > c.upper(index)
            ? "trend.above"
            : c.plotted(index) < c.lower(index) ? "trend.below" : "trend.between";
    return " " + words.text(where);
  }

  private String runs(int index) {
    StringBuilder runs = new StringBuilder();
    signals.stream()
        .filter(signal -> signal.last() > signal.first())
        .filter(signal -> signal.first() <= index && index <= signal.last())
        .forEach(signal -> runs.append(' ').append(signal.sentence()));
    return runs.toString();
  }
}
