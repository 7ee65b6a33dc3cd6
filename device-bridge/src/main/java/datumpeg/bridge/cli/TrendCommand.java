package datumpeg.bridge.cli;

import datumpeg.analysis.trend.ControlChart;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.RunRules;
import datumpeg.analysis.trend.RunSignal;
import datumpeg.analysis.trend.TargetTrend;
import datumpeg.analysis.trend.TrendSeries;
import datumpeg.bridge.exchange.TrendTable;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.JobHistories;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code trend}. */
@Command(
    name = "trend",
    description =
        "How a check goes: with JOB each of its targets across stages and rounds, without it one"
            + " check over all jobs, with control limits and run rules.")
final class TrendCommand implements Callable<Integer> {
  /** What is plotted. */
  enum Chart {
    INDIVIDUALS,
    EWMA
  }

  /** By which rules runs are flagged. */
  enum Rules {
    WESTERN_ELECTRIC,
    NELSON,
    LIMITS
  }

  private final DatumpegCommand program;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "JOB",
      description = "The job's id; all jobs if it is left out.")
  private @Nullable String job;

  @Mixin private TrendOptions options = new TrendOptions();

  @Option(
      names = "--per",
      paramLabel = "POINT",
      description =
          "What one point is. target: an outcome (otherwise so); job: the mean of a job's outcomes.")
  private String per = "target";

  @Option(
      names = "--chart",
      paramLabel = "CHART",
      description =
          "individuals: the values (otherwise so); ewma: their exponentially weighted moving"
              + " average.")
  private String chart = "individuals";

  @Option(
      names = "--weight",
      paramLabel = "NUMBER",
      description = "Weight of the newest value in the moving average (otherwise 0.2).")
  private double weight = ControlChart.USUAL_WEIGHT;

  @Option(
      names = "--baseline",
      paramLabel = "N",
      description = "Take centre and control limits from the first N points only.")
  private int baseline;

  @Option(
      names = "--rules",
      paramLabel = "RULES",
      description = "western-electric (otherwise so), nelson, or limits for the limits alone.")
  private String rules = "western-electric";

  @Option(names = "--csv", paramLabel = "FILE.csv", description = "Write the points as a table.")
  private @Nullable String csv;

  TrendCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    requireSense();
    String one = job;
    if (one == null) {
      overJobs();
    } else {
      ofJob(one);
    }
    return 0;
  }

  private void requireSense() {
    if (!(weight > 0 && weight <= 1)) {
      throw new InputException(
          "--weight is " + weight + "; expected a number above 0 and at most 1.");
    }
    if (baseline < 0 || baseline == 1) {
      throw new InputException(
          "--baseline is " + baseline + "; expected at least 2 points to take limits from.");
    }
    if (job != null && csv != null) {
      throw new InputException("--csv writes a check over all jobs; leave JOB out.");
    }
  }

  private void ofJob(String name) {
    StoredJob stored;
    try (SiteRecord record = Records.forReading(program)) {
      stored = StoredJob.load(record, name);
    }
    List<DatedOutcome> outcomes = JobHistories.of(stored);
    options.requireKnown(outcomes);
    List<TargetTrend> trends =
        TargetTrend.allOf(outcomes.stream().filter(options.filter(options.check)::passes).toList());
    if (program.json()) {
      Records.print(program, TrendJson.ofJob(stored.key().job(), trends));
    } else {
      new TrendPrinter(program.console().out()).ofJob(stored, trends);
    }
  }

  private void overJobs() {
    JobHistories histories = Records.histories(program);
    options.requireKnown(histories.outcomes());
    String check = options.check;
    if (check.isEmpty()) {
      throw new InputException(
          "A trend over jobs is of one check; name it with --check. The record has outcomes of "
              + (histories.checks().isEmpty() ? "none" : String.join(", ", histories.checks()))
              + ".");
    }
    TrendSeries series =
        TrendSeries.of(
            histories.outcomes(),
            options.question(check, Choice.of(PointPer.values(), "--per", per)));
    Optional<ControlChart> control =
        Choice.of(Chart.values(), "--chart", chart) == Chart.INDIVIDUALS
            ? ControlChart.individuals(series.values(), baseline)
            : ControlChart.movingAverage(series.values(), baseline, weight);
    List<RunSignal> signals = control.map(found -> ruleSet().signals(found)).orElse(List.of());
    if (csv != null) {
      OutputFile.write(program, csv, TrendTable.of(series, control, signals).csv());
    }
    if (program.json()) {
      Records.print(
          program, TrendJson.overJobs(series, control, signals, ruleSet(), histories.unread()));
    } else {
      new TrendPrinter(program.console().out())
          .overJobs(series, control, signals, ruleSet(), histories.unread());
    }
  }

  private RunRules ruleSet() {
    return switch (Choice.of(Rules.values(), "--rules", rules)) {
      case WESTERN_ELECTRIC -> RunRules.WESTERN_ELECTRIC;
      case NELSON -> RunRules.NELSON;
      case LIMITS -> RunRules.LIMITS_ONLY;
    };
  }
}
