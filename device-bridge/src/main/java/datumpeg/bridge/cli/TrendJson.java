package datumpeg.bridge.cli;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.RoundChange;
import datumpeg.analysis.trend.RunRules;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TargetTrend;
import datumpeg.analysis.trend.TrendPoint;
import datumpeg.analysis.trend.TrendSeries;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonText;
import datumpeg.bridge.json.JsonValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Trends as JSON; numbers rounded half-even to 1e-6. */
final class TrendJson {
  private static final int DECIMALS = 6;

  private TrendJson() {}

  static JsonObject overJobs(
      TrendSeries series,
      Optional<ControlChart> chart,
      List<RunSignal> signals,
      RunRules rules,
      List<String> unread) {
    List<JsonObject> points = new ArrayList<>();
    for (int i = 0; i < series.points().size(); i++) {
      points.add(point(series.points().get(i), chart, i));
    }
    return JsonObject.builder()
        .put("format", 1)
        .put("check", series.question().filter().check())
        .put("unit", series.unit())
        .put("round", Choice.word(series.question().rounds()))
        .put("per", Choice.word(series.question().per()))
        .put("jobCount", series.jobCount())
        .put("chart", chart.<JsonValue>map(TrendJson::chart).orElse(new JsonNull()))
        .put("points", JsonArray.of(points.stream()))
        .put("rules", rules.source())
        .put("signals", JsonArray.of(signals.stream().map(TrendJson::signal)))
        .put(
            "leftOut",
            JsonObject.builder()
                .put("withoutLimit", series.withoutLimit())
                .put("otherUnit", series.otherUnit())
                .put("stale", series.stale())
                .build())
        .put("notes", JsonArray.ofTexts(unread))
        .build();
  }

  private static JsonObject chart(ControlChart chart) {
    return JsonObject.builder()
        .put("kind", chart.isOfIndividuals() ? "individuals" : "ewma")
        .put("weight", decimal(chart.weight()))
        .put("baseline", chart.baseline())
        .put("centre", decimal(chart.centre()))
        .put("meanRange", decimal(chart.meanRange()))
        .put("sigma", decimal(chart.sigma()))
        .put("rangeLimit", decimal(chart.rangeLimit()))
        .build();
  }

  private static JsonObject point(TrendPoint point, Optional<ControlChart> chart, int index) {
    DatedOutcome newest = point.newest();
    return JsonObject.builder()
        .put("name", point.name())
        .put("job", newest.jobName())
        .put("at", newest.at().toString())
        .put("stage", newest.stage())
        .put("crew", newest.job().crew())
        .put("site", newest.job().site())
        .put("slabBy", newest.job().slabBy())
        .put("meters", JsonArray.ofTexts(newest.meters()))
        .put("outcomes", point.outcomes().size())
        .put("value", decimal(point.value()))
        .put("standardUncertainty", decimal(point.standardUncertainty()))
        .put("lower", optional(point.lower()))
        .put("upper", optional(point.upper()))
        .put("plotted", optional(chart.map(c -> c.plotted(index))))
        .put("controlLower", optional(chart.map(c -> c.lower(index))))
        .put("controlUpper", optional(chart.map(c -> c.upper(index))))
        .build();
  }

  /** Points counted from 1, as the sentence counts them. */
  private static JsonObject signal(RunSignal signal) {
    return JsonObject.builder()
        .put("first", signal.first() + 1)
        .put("last", signal.last() + 1)
        .put("text", signal.sentence())
        .build();
  }

  static JsonObject ofJob(String job, List<TargetTrend> trends) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", job)
        .put("targets", JsonArray.of(trends.stream().map(TrendJson::trend)))
        .build();
  }

  private static JsonObject trend(TargetTrend trend) {
    Outcome first = trend.steps().get(0).outcome();
    return JsonObject.builder()
        .put("check", first.check())
        .put("target", first.target())
        .put("unit", first.unit().symbol())
        .put("steps", JsonArray.of(trend.steps().stream().map(TrendJson::step)))
        .put("changes", JsonArray.of(trend.changes().stream().map(TrendJson::change)))
        .build();
  }

  private static JsonObject step(DatedOutcome step) {
    Outcome outcome = step.outcome();
    OutcomeUnit unit = outcome.unit();
    return JsonObject.builder()
        .put("stage", step.stage())
        .put("round", outcome.round())
        .put("at", step.at().toString())
        .put("deviation", decimal(unit.fromSi(outcome.deviation())))
        .put("expandedUncertainty", decimal(unit.fromSi(outcome.expandedUncertainty())))
        .put(
            "verdict",
            outcome.verdict().<JsonValue>map(v -> new JsonText(verdict(v))).orElse(new JsonNull()))
        .put("stale", outcome.stale())
        .build();
  }

  private static String verdict(Verdict verdict) {
    return Choice.word(verdict);
  }

  private static JsonObject change(RoundChange change) {
    OutcomeUnit unit = change.after().unit();
    return JsonObject.builder()
        .put("change", decimal(unit.fromSi(change.change())))
        .put("expandedUncertainty", decimal(unit.fromSi(change.expandedUncertainty())))
        .put("moved", change.moved())
        .build();
  }

  private static JsonValue optional(OptionalDouble value) {
    return value.isPresent() ? decimal(value.getAsDouble()) : new JsonNull();
  }

  private static JsonValue optional(Optional<Double> value) {
    return value.<JsonValue>map(TrendJson::decimal).orElse(new JsonNull());
  }

  private static JsonDecimal decimal(double value) {
    return JsonDecimal.rounded(value, DECIMALS);
  }
}
