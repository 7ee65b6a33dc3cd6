package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.bridge.jobs.Movement;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
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
    try (SiteRecord record = Records.existing(program)) {
      Movement movement = Movement.store(record, job, thing, why, Records.start(program));
      print(movement.job(), movement.thing(), movement.readingsBefore());
    }
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
}
