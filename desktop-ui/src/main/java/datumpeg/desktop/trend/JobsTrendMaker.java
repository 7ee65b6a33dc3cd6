package datumpeg.desktop.trend;

import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.OutcomeNames;
import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.RunRules;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.analysis.trend.TrendSeries;
import datumpeg.analysis.trend.TrendWords;
import datumpeg.bridge.exchange.TrendTable;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.Choices;
import datumpeg.desktop.source.AllOutcomes;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a page of what is asked. A pure function; any thread. */
final class JobsTrendMaker {
  private static final int MOST_SIGNALS_TOLD = 8;

  private final Words words;

  JobsTrendMaker(Words words) {
    this.words = words;
  }

  JobsTrendPage page(TrendAsked asked) {
    List<DatedOutcome> outcomes = AllOutcomes.of(asked.state());
    OutcomeNames names = new OutcomeNames(outcomes);
    Map<TrendMatter, List<Choice>> choices = choices(names, asked);
    String check = check(names, asked);
    TrendSeries series = TrendSeries.of(outcomes, asked.question(check));
    Optional<ControlChart> chart =
        asked.movingAverage()
            ? ControlChart.movingAverage(series.values(), 0, ControlChart.USUAL_WEIGHT)
            : ControlChart.individuals(series.values(), 0);
    List<RunSignal> signals = chart.map(asked.rules()::signals).orElse(List.of());
    ChartMaker maker = new ChartMaker(words, series, chart, signals);
    List<String> sentences = sentences(asked, series, chart, signals);
    return new JobsTrendPage(
        choices,
        chosen(asked, check),
        asked.from(),
        asked.to(),
        maker.points(),
        maker.labels(),
        sentences,
        signals(signals),
        String.join(" ", sentences),
        () -> TrendTable.of(series, chart, signals).csv());
  }

  /** The chosen check, or the first there is. */
  private static String check(OutcomeNames names, TrendAsked asked) {
    String chosen = asked.chosen(TrendMatter.CHECK);
    return !chosen.isEmpty() || names.checks().isEmpty() ? chosen : names.checks().get(0);
  }

  private static Map<TrendMatter, String> chosen(TrendAsked asked, String check) {
    Map<TrendMatter, String> chosen = new EnumMap<>(TrendMatter.class);
    for (TrendMatter matter : TrendMatter.values()) {
      chosen.put(matter, asked.chosen(matter));
    }
    chosen.put(TrendMatter.CHECK, check);
    chosen.merge(TrendMatter.ROUNDS, RoundChoice.FIRST.name(), JobsTrendMaker::orFirst);
    chosen.merge(TrendMatter.PER, PointPer.TARGET.name(), JobsTrendMaker::orFirst);
    chosen.merge(TrendMatter.SCALE, TrendScale.AS_MEASURED.name(), JobsTrendMaker::orFirst);
    chosen.merge(TrendMatter.CHART, "INDIVIDUALS", JobsTrendMaker::orFirst);
    chosen.merge(TrendMatter.RULES, RunRules.WESTERN_ELECTRIC.name(), JobsTrendMaker::orFirst);
    return chosen;
  }

  private static String orFirst(String chosen, String first) {
    return chosen.isEmpty() ? first : chosen;
  }

  private Map<TrendMatter, List<Choice>> choices(OutcomeNames names, TrendAsked asked) {
    Choices of = new Choices(words);
    Map<TrendMatter, List<Choice>> made = new EnumMap<>(TrendMatter.class);
    made.put(TrendMatter.CHECK, of.ofChecks(names.checks()));
    made.put(TrendMatter.TARGET, of.allOr(names.endings(check(names, asked))));
    made.put(TrendMatter.CREW, of.allOr(names.crews()));
    made.put(TrendMatter.SITE, of.allOr(names.sites()));
    made.put(TrendMatter.METER, of.allOr(names.meters()));
    made.put(TrendMatter.SLAB, of.allOr(names.slabLayers()));
    made.put(TrendMatter.ROUNDS, of.worded("rounds", RoundChoice.values()));
    made.put(TrendMatter.PER, of.worded("per", PointPer.values()));
    made.put(TrendMatter.SCALE, of.worded("scale", TrendScale.values()));
    made.put(
        TrendMatter.CHART, of.worded("chart", List.of("INDIVIDUALS", TrendAsked.MOVING_AVERAGE)));
    made.put(TrendMatter.RULES, of.worded("rules", RunRules.values()));
    return made;
  }

  private List<String> sentences(
      TrendAsked asked, TrendSeries series, Optional<ControlChart> chart, List<RunSignal> signals) {
    List<String> sentences = new ArrayList<>();
    boolean nothingYet = asked.state().jobs().stream().allMatch(job -> job.outcomes().isEmpty());
    if (nothingYet) {
      sentences.add(words.text("trend.no-jobs"));
    } else {
      TrendWords.of(series, chart, signals, asked.rules())
          .forEach(sentence -> sentences.add(words.told(sentence)));
    }
    long waiting = AllOutcomes.waiting(asked.state());
    if (waiting > 0 && !nothingYet) {
      sentences.add(words.count("trend.jobs-waiting", waiting));
    }
    asked.state().jobs().stream()
        .filter(job -> !job.trouble().isEmpty())
        .map(this::leftOut)
        .forEach(sentences::add);
    return sentences;
  }

  private String leftOut(JobState job) {
    return words.text("trend.job-left-out", job.row().id(), job.trouble());
  }

  private List<String> signals(List<RunSignal> signals) {
    List<String> told = new ArrayList<>();
    for (int i = signals.size() - 1; i >= Math.max(0, signals.size() - MOST_SIGNALS_TOLD); i--) {
      told.add(signals.get(i).sentence());
    }
    if (signals.size() > MOST_SIGNALS_TOLD) {
      told.add(words.text("trend.more-signals", signals.size() - MOST_SIGNALS_TOLD));
    }
    return told;
  }
}
