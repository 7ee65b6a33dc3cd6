package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.WatchedTarget;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code watch}. */
@Command(
    name = "watch",
    description = {
      "Show one target live, for the one who turns the prop: where it stands between its limits.",
      "Nothing is recorded until you type keep, with the hand off; quit ends it."
    })
final class WatchCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(index = "1", paramLabel = "TARGET", description = "Such as column.A3/across.")
  private String target = "";

  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      description =
          "The stage a kept value is of (default: of those that measure the target, the one measured"
              + " last, else the first).")
  private String stage = "";

  @Option(names = "--by", paramLabel = "NAME", description = "Who measures.")
  private String operator = "";

  @Option(names = "--silent", description = "No tone while the value is inside its limits.")
  private boolean silent;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description =
          "When nobody can type: how long to wait for links that were lost (default 300).")
  private int waitSeconds = (int) LinkTerms.USUAL.patience().toSeconds();

  @Mixin private final MeterLinks links = new MeterLinks();

  WatchCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    try (SiteRecord record = Records.forMeasuring(program)) {
      StoredJob stored = StoredJob.load(record, job);
      WatchedTarget watched = WatchedTarget.of(stored, stage, target);
      LiveMeasuring measuring =
          new LiveMeasuring(
              program.recordFile(),
              watched.stage().id(),
              links.all(program),
              Records.start(program, operator),
              links.terms(program, waitSeconds),
              program.waitingTerms());
      Path capture = measuring.captureFile(stored);
      LiveSession.Ending ending =
          measuring.measure(
              record,
              stored,
              List.of(watched.wanted()),
              watched::setting,
              new WatchTalk(program.console().err(), watched.deviation(stored), !silent),
              capture,
              live -> MeterLinks.readInput(program, live));
      finish(stored, watched.stage(), ending, capture);
      measuring.requireWhole(stored, ending);
      return 0;
    }
  }

  private void finish(StoredJob stored, Stage chosen, LiveSession.Ending ending, Path capture) {
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", stored.key().job())
              .put("stage", chosen.id())
              .put("target", target)
              .put("readingCount", ending.recordedCount())
              .put("capture", capture.toString())
              .build());
    } else {
      program
          .console()
          .out()
          .printf(
              "%s of %s, stage %s: %s. The raw bytes are in %s.%n",
              target,
              stored.key(),
              chosen.id(),
              ending.recordedCount() == 0 ? "nothing kept" : "one reading kept",
              capture);
    }
  }
}
