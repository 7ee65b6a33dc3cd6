package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.jobs.Withdrawal;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code void}. */
@Command(
    name = "void",
    description = "Withdraw a reading. It stays in the record beside the row that withdraws it.")
final class VoidCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(
      index = "1",
      paramLabel = "READING",
      description = "The reading's id or its beginning ('job show JOB --readings' lists them).")
  private String reading = "";

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why = "";

  VoidCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    requireReason(why);
    ReadingEntry withdrawn;
    JobKey key;
    try (SiteRecord record = Records.existing(program)) {
      key = StoredJob.find(record, job);
      withdrawn = Withdrawal.find(record, key, reading);
      try (RecordSession session = record.openSession(Records.start(program))) {
        session.append(key, new VoidEntry(withdrawn.id(), why));
      }
    }
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", key.job())
              .put("reading", withdrawn.id().toString())
              .put("why", why)
              .build());
    } else {
      program
          .console()
          .out()
          .printf(
              "Withdrawn: %s, %s %s %s (reading %s).%n",
              withdrawn.stage(),
              withdrawn.quantity(),
              withdrawn.target(),
              (withdrawn.value() + " " + withdrawn.unit()).strip(),
              withdrawn.id());
    }
    return 0;
  }

  static void requireReason(String why) {
    if (why.isBlank()) {
      throw new InputException("--why is blank; expected the reason in words.");
    }
  }
}
