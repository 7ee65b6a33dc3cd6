package datumpeg.bridge.cli;

import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.jobs.SignOff;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code accept}. */
@Command(
    name = "accept",
    description = "Accept an item of a stage as it is, by the engineer's word.")
final class AcceptCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(
      index = "1",
      paramLabel = "OUTCOME",
      description =
          "Check and target, such as \"slab-square A1\"; or not-measured, slip-suspected,"
              + " \"question NAME\".")
  private String outcome = "";

  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      defaultValue = "",
      showDefaultValue = picocli.CommandLine.Help.Visibility.NEVER,
      description = "The stage's id; otherwise the latest at which the item is open.")
  private String stage = "";

  @Option(names = "--by", paramLabel = "NAME", required = true, description = "Who accepts it.")
  private String by = "";

  @Option(
      names = "--reference",
      paramLabel = "TEXT",
      required = true,
      description = "The engineer's reference, such as the number of a letter.")
  private String reference = "";

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why = "";

  AcceptCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    try (SiteRecord record = Records.existing(program)) {
      HoldPoint point =
          new SignOff(record, Records.start(program, by))
              .accept(job, stage, outcome, by, reference, why);
      new HoldPointPrinter(program).print(StoredJob.load(record, job).job(), point);
    }
    return 0;
  }
}
