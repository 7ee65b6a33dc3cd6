package datumpeg.bridge.cli;

import datumpeg.analysis.job.PlanFit;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.TargetFormatException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.MovedEntry;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code moved}. */
@Command(
    name = "moved",
    description = "Say that something was moved: what stands on it starts its next round.")
final class MovedCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(
      index = "1",
      paramLabel = "THING",
      description = "What was moved, such as column.A3, portal.3, wall.A or line.A1.")
  private String thing = "";

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why = "";

  MovedCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    VoidCommand.requireReason(why);
    MovedThing moved = parse(thing);
    StoredJob stored;
    try (SiteRecord record = Records.existing(program)) {
      stored = StoredJob.load(record, job);
      PlanFit.misfit(stored.job(), moved)
          .ifPresent(
              sentence -> {
                throw new InputException(sentence);
              });
      try (RecordSession session = record.openSession(Records.start(program))) {
        session.append(stored.key(), new MovedEntry(moved.text(), why));
      }
    }
    long readings =
        stored.readings().stream().filter(reading -> moved.touches(reading.target())).count();
    print(stored, moved, readings);
    return 0;
  }

  private void print(StoredJob stored, MovedThing moved, long readings) {
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", stored.key().job())
              .put("thing", moved.text())
              .put("why", why)
              .put("readingsBefore", readings)
              .build());
      return;
    }
    program
        .console()
        .out()
        .printf(
            "%s of %s was moved. The next readings on it begin a new round;%s%n",
            moved.text(),
            stored.key(),
            readings == 0
                ? " none were taken before."
                : " what follows from the " + readings + " taken before is stale until then.");
  }

  private static MovedThing parse(String text) {
    try {
      return MovedThing.parse(text);
    } catch (TargetFormatException e) {
      throw new InputException(String.valueOf(e.getMessage()), e);
    }
  }
}
