package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.collect.GuideSetting;
import datumpeg.bridge.collect.HoldRule;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
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

  @Mixin private final MeterLinks links = new MeterLinks();

  WatchCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    try (SiteRecord record = Records.forWriting(program)) {
      StoredJob stored = StoredJob.load(record, job);
      Stage chosen = chosen(stored);
      Wanted wanted = wanted(stored, chosen);
      HoldRule rule = HoldRule.of(stored.job(), chosen);
      LiveMeasuring measuring = new LiveMeasuring(program, links, operator, chosen.id());
      Path capture = measuring.captureFile(stored);
      WatchTalk talk =
          new WatchTalk(
              program.console().err(), LiveDeviation.of(stored.job(), rule, wanted), !silent);
      LiveSession.Ending ending =
          measuring.measure(
              record,
              stored,
              List.of(wanted),
              collector ->
                  new GuideSetting(
                      collector, rule, Guide.Order.CONFIRMED, OptionalInt.empty(), List::of),
              talk,
              capture);
      finish(stored, chosen, ending, capture);
      measuring.requireWhole(stored, ending);
      return 0;
    }
  }

  private Stage chosen(StoredJob stored) {
    if (!stage.isEmpty()) {
      return CaptureIntake.stage(stored, stage);
    }
    List<Stage> having =
        stored.job().stages().stream()
            .filter(
                one ->
                    MeasuringList.of(stored.job().setOut(), one).targets().stream()
                        .anyMatch(other -> other.text().equals(target)))
            .toList();
    if (having.isEmpty()) {
      throw new InputException(
          "No stage of "
              + stored.key()
              + " measures '"
              + target
              + "'; 'reduce' and 'measure' name the targets, such as column.A3/across.");
    }
    return having.stream()
        .filter(
            one -> stored.readings().stream().anyMatch(reading -> reading.stage().equals(one.id())))
        .reduce((earlier, later) -> later)
        .orElse(having.get(0));
  }

  private Wanted wanted(StoredJob stored, Stage chosen) {
    return Wanted.of(MeasuringList.of(stored.job().setOut(), chosen)).stream()
        .filter(wanted -> wanted.target().text().equals(target))
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    "The stage " + chosen.id() + " does not measure '" + target + "'."));
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
