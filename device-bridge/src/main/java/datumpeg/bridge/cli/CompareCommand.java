package datumpeg.bridge.cli;

import datumpeg.analysis.compare.Comparer;
import datumpeg.analysis.compare.Comparison;
import datumpeg.analysis.compare.Factor;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.PointPer;
import datumpeg.bridge.exchange.TrendTable;
import datumpeg.bridge.jobs.JobHistories;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code compare}. */
@Command(
    name = "compare",
    description =
        "Crews, sites, slab layers or meters compared: bias and spread with their uncertainty, and"
            + " what may be concluded from so many jobs.")
final class CompareCommand implements Callable<Integer> {
  /** What jobs are told apart by. */
  enum By {
    CREW,
    SITE,
    SLAB,
    METER
  }

  private final DatumpegCommand program;

  @Option(
      names = "--by",
      paramLabel = "FACTOR",
      required = true,
      description = "crew, site, slab (who laid it) or meter.")
  private String by = "";

  @Mixin private TrendOptions options = new TrendOptions();

  @Option(
      names = "--csv",
      paramLabel = "FILE.csv",
      description = "Write each job's mean and scatter as a table.")
  private @Nullable String csv;

  CompareCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    Factor factor = factor();
    JobHistories histories = Records.histories(program);
    options.requireKnown(histories.outcomes());
    List<String> checks = options.check.isEmpty() ? histories.checks() : List.of(options.check);
    List<Comparison> comparisons = comparisons(histories.outcomes(), checks, factor);
    if (csv != null) {
      OutputFile.write(program, csv, TrendTable.of(comparisons).csv());
    }
    if (program.json()) {
      Records.print(program, CompareJson.of(by, comparisons, histories.unread()));
    } else {
      new ComparePrinter(program.console().out()).print(comparisons, histories.unread());
    }
    return 0;
  }

  private List<Comparison> comparisons(
      List<DatedOutcome> outcomes, List<String> checks, Factor factor) {
    Comparer comparer = new Comparer();
    return checks.stream()
        .map(
            check ->
                comparer.compare(
                    outcomes, options.question(check, PointPer.TARGET), factor, checks.size()))
        .toList();
  }

  private Factor factor() {
    return switch (Choice.of(By.values(), "--by", by)) {
      case CREW -> Factor.CREW;
      case SITE -> Factor.SITE;
      case SLAB -> Factor.SLAB_LAYER;
      case METER -> Factor.METER;
    };
  }
}
