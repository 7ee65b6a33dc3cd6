package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.collect.FurtherReadings;
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
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code measure}. */
@Command(
    name = "measure",
    description = {
      "Measure a stage's targets one by one: readings come from links and the keyboard.",
      "Type a value, or skip, back, undo, quit; where a value is held, yes, again or a number.",
      "Each reading is stored before the next is asked for. Run it again to go on where you were."
    })
final class MeasureCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Option(names = "--stage", paramLabel = "STAGE", required = true, description = "The stage.")
  private String stage = "";

  @Option(names = "--by", paramLabel = "NAME", description = "Who measures.")
  private String operator = "";

  @Option(
      names = "--any-order",
      description = "Take readings as they come; ask where several targets are possible.")
  private boolean anyOrder;

  @Option(
      names = "--round",
      paramLabel = "N",
      description = "Measure all targets as round N: a second visit is round 2.")
  private @Nullable Integer round;

  @Option(names = "--big", description = "Show the target in letters that can be read from afar.")
  private boolean big;

  @Option(names = "--silent", description = "No tone for a value taken or held.")
  private boolean silent;

  @Mixin private final MeterLinks links = new MeterLinks();

  MeasureCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    LiveMeasuring measuring = new LiveMeasuring(program, links, operator, stage);
    try (SiteRecord record = Records.forWriting(program)) {
      StoredJob stored = StoredJob.load(record, job);
      Stage chosen = CaptureIntake.stage(stored, stage);
      List<Wanted> list = Wanted.of(MeasuringList.of(stored.job().setOut(), chosen));
      if (list.isEmpty()) {
        throw new InputException(
            "The stage " + stage + " of " + stored.key() + " has no targets to measure.");
      }
      list = open(stored, list);
      Path capture = measuring.captureFile(stored);
      LiveSession.Ending ending =
          measuring.measure(
              record,
              stored,
              list,
              collector ->
                  new GuideSetting(
                      collector,
                      HoldRule.of(stored.job(), chosen),
                      anyOrder ? Guide.Order.ANY : Guide.Order.LISTED,
                      round(),
                      () -> new FurtherReadings(StoredJob.load(record, job), stage).wanted()),
              new MeasureTalk(program.console().err(), big, !silent),
              capture);
      finish(stored, ending, capture);
      measuring.requireWhole(stored, ending);
      return 0;
    }
  }

  /** What no reading answers yet, or, when all is measured, what would decide something. */
  private List<Wanted> open(StoredJob stored, List<Wanted> list) {
    if (round != null && round < 1) {
      throw new InputException("--round is " + round + "; expected 1 or more.");
    }
    List<Wanted> open = Wanted.open(list, stored, stage, round());
    if (open.size() < list.size() && !open.isEmpty()) {
      program
          .console()
          .err()
          .printf(
              "%d of %d readings are in the record already; going on behind them.%n",
              list.size() - open.size(), list.size());
    }
    List<Wanted> asked = open.isEmpty() ? new FurtherReadings(stored, stage).wanted() : open;
    if (asked.isEmpty()) {
      throw new InputException(
          "All of stage "
              + stage
              + " of "
              + stored.key()
              + " is measured, and nothing more would decide anything. For a second visit give"
              + " --round 2 (or the next number); after something was moved say so with 'moved'.");
    }
    return asked;
  }

  private OptionalInt round() {
    return round == null ? OptionalInt.empty() : OptionalInt.of(round);
  }

  private void finish(StoredJob stored, LiveSession.Ending ending, Path capture) {
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", stored.key().job())
              .put("stage", stage)
              .put("readingCount", ending.recordedCount())
              .put("capture", capture.toString())
              .build());
    } else {
      program
          .console()
          .out()
          .printf(
              "Recorded %d reading(s) of %s, stage %s. The raw bytes are in %s.%n",
              ending.recordedCount(), stored.key(), stage, capture);
    }
  }
}
