package datumpeg.bridge.cli;

import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code reduce}. */
@Command(
    name = "reduce",
    description = "What the readings say: outcomes with uncertainty, verdicts, what to do.")
final class ReduceCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Option(names = "--stage", paramLabel = "STAGE", description = "Only this stage.")
  private @Nullable String stage;

  @Option(
      names = "--revision",
      paramLabel = "N",
      description = "By this revision of the job file instead of the newest.")
  private @Nullable Integer revision;

  @Option(names = "--strict", description = "End with status 1 if anything is nonconforming.")
  private boolean strict;

  ReduceCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    StoredJob stored;
    try (SiteRecord record = Records.forReading(program)) {
      stored =
          revision == null ? StoredJob.load(record, job) : StoredJob.load(record, job, revision);
    }
    String wanted = stage;
    if (wanted != null) {
      CaptureIntake.stage(stored, wanted);
    }
    Findings findings = stored.findings();
    List<StageFindings> stages =
        findings.stages().stream()
            .filter(found -> wanted == null || found.stage().equals(wanted))
            .toList();
    List<StoredJob.Stray> strays =
        stored.strays().stream()
            .filter(stray -> wanted == null || stray.stage().equals(wanted))
            .toList();
    if (program.json()) {
      Records.print(program, FindingsJson.of(findings, stages, strays, ProgramVersion.number()));
    } else {
      print(stored, stages);
    }
    boolean nonconforming =
        stages.stream()
            .flatMap(found -> found.outcomes().stream())
            .anyMatch(outcome -> !outcome.stale() && outcome.is(Verdict.NONCONFORMING));
    return strict && nonconforming ? 1 : 0;
  }

  private void print(StoredJob stored, List<StageFindings> stages) {
    FindingsPrinter printer = new FindingsPrinter(program.console().out());
    program.console().out().printf("%s (%s)%n%n", stored.job().identity().name(), stored.key());
    stages.forEach(printer::print);
    if (stages.isEmpty()) {
      program.console().out().println("No readings" + (stage == null ? "." : " at this stage."));
    }
    stored
        .strays()
        .forEach(
            stray ->
                program
                    .console()
                    .out()
                    .printf(
                        "Left out: reading %s of %s, stage %s: %s%n",
                        stray.readingId(), stray.target(), stray.stage(), stray.why()));
  }
}
