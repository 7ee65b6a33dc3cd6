package datumpeg.bridge.cli;

import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobs.JobIntake;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.SiteRecord;
import java.io.PrintStream;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job add}, {@code job list}, {@code job show}. */
@Command(name = "job", description = "Take a job file in; list jobs; show one.")
final class JobCommand {
  private static final int MOST_STRAYS_PRINTED = 10;

  private final DatumpegCommand program;

  JobCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Command(
      name = "add",
      description =
          "Take a job file in. The same bytes change nothing; others become the job's next"
              + " revision, and its readings stay.")
  int add(@Parameters(paramLabel = "JOB.toml", description = "The job file.") String fileName) {
    JobFile file = JobFile.load(Records.file(program, fileName), fileName);
    try (SiteRecord record = Records.forWriting(program)) {
      JobIntake intake = JobIntake.take(record, file, Records.start(program));
      if (program.json()) {
        Records.print(program, json(intake));
      } else {
        print(intake, file.job().identity().name());
      }
    }
    return 0;
  }

  @Command(name = "list", description = "List the jobs in the record.")
  int list() {
    try (SiteRecord record = Records.forReading(program)) {
      List<JobSummary> jobs = record.jobs();
      if (program.json()) {
        Records.print(
            program,
            JsonObject.builder()
                .put("format", 1)
                .put("jobs", JsonArray.of(jobs.stream().map(JobCommand::json)))
                .build());
      } else {
        print(jobs);
      }
    }
    return 0;
  }

  @Command(name = "show", description = "Show a job: its plan, limits, meters and stages.")
  int show(
      @Parameters(paramLabel = "JOB", description = "The job's id.") String job,
      @Option(names = "--readings", description = "Show each reading with its id too.")
          boolean readings) {
    try (SiteRecord record = Records.forReading(program)) {
      StoredJob stored = StoredJob.load(record, job);
      JobLog log = record.log(stored.key());
      if (program.json()) {
        Records.print(program, JobJson.of(stored, log, readings));
      } else {
        new JobPrinter(program.console().out(), stored, log).print(readings);
      }
    }
    return 0;
  }

  private void print(JobIntake intake, String name) {
    PrintStream out = program.console().out();
    if (!intake.isNew()) {
      out.printf(
          "Nothing new: the record has these bytes as revision %d of %s.%n",
          intake.revision(), intake.key());
      return;
    }
    out.printf("Stored revision %d of %s (%s).%n", intake.revision(), intake.key(), name);
    printStrays(out, intake.strays());
  }

  /** Readings that the plan has no place for, the first of them by name. */
  static void printStrays(PrintStream out, List<StoredJob.Stray> strays) {
    if (strays.isEmpty()) {
      return;
    }
    out.printf(
        "Warning: %d reading(s) taken before have no place in this plan. They stay in the record"
            + " and are left out of outcomes:%n",
        strays.size());
    TextTable table = TextTable.ofWords();
    strays.stream()
        .limit(MOST_STRAYS_PRINTED)
        .forEach(stray -> table.row(stray.stage(), stray.target(), stray.why()));
    table.print(out, "  ");
    if (strays.size() > MOST_STRAYS_PRINTED) {
      out.printf("  and %d more.%n", strays.size() - MOST_STRAYS_PRINTED);
    }
  }

  private void print(List<JobSummary> jobs) {
    PrintStream out = program.console().out();
    if (jobs.isEmpty()) {
      out.println("The record has no jobs yet; take one in with 'job add JOB.toml'.");
      return;
    }
    TextTable table = TextTable.ofWords().row("job", "revision", "readings", "last row", "name");
    for (JobSummary job : jobs) {
      table.row(
          job.key().toString(),
          Integer.toString(job.revision()),
          (job.readingCount() - job.voidCount())
              + (job.voidCount() == 0 ? "" : " + " + job.voidCount() + " withdrawn"),
          job.lastAt().toString(),
          job.name());
    }
    table.print(out, "");
  }

  private static JsonObject json(JobIntake intake) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", intake.key().job())
        .put("organisation", intake.key().organisation())
        .put("revision", intake.revision())
        .put("new", intake.isNew())
        .put("strays", JobJson.strays(intake.strays()))
        .build();
  }

  private static JsonObject json(JobSummary job) {
    return JsonObject.builder()
        .put("job", job.key().job())
        .put("organisation", job.key().organisation())
        .put("name", job.name())
        .put("revision", job.revision())
        .put("readingCount", job.readingCount())
        .put("voidCount", job.voidCount())
        .put("lastAt", job.lastAt().toString())
        .build();
  }
}
