package datumpeg.bridge.cli;

import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.jobs.Photos;
import datumpeg.bridge.jobs.SignOff;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code sign}. */
@Command(
    name = "sign",
    description = "Close the hold point of a stage, once every item of its check list is closed.")
final class SignCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(index = "1", paramLabel = "STAGE", description = "The stage's id.")
  private String stage = "";

  @Option(names = "--by", paramLabel = "NAME", required = true, description = "Who signs.")
  private String by = "";

  @Option(
      names = "--photo",
      paramLabel = "FILE",
      description = "A photo that belongs to the stage; may be given several times.")
  private List<String> photos = new ArrayList<>();

  SignCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    SessionStart start = Records.start(program, by);
    photos.forEach(photo -> Photos.require(Records.file(program, photo)));
    try (SiteRecord record = Records.existing(program)) {
      HoldPoint point = new SignOff(record, start).sign(job, stage, by);
      StoredJob stored = StoredJob.load(record, job);
      Photos kept = new Photos(program.recordFile());
      for (String photo : photos) {
        kept.attach(record, start, stored.key(), stage, Records.file(program, photo), "");
      }
      new HoldPointPrinter(program).print(stored.job(), point);
    }
    return 0;
  }
}
