package datumpeg.bridge.cli;

import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.nio.file.Path;
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
      "Type a value, or skip, back, undo, go TARGET, quit; where a value is held, yes,",
      "again or a number; where a question is asked, yes or no.",
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

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description =
          "When nobody can type: how long to wait for links that were lost (default 300).")
  private int waitSeconds = (int) LinkTerms.USUAL.patience().toSeconds();

  @Mixin private final MeterLinks links = new MeterLinks();

  MeasureCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    LiveMeasuring measuring =
        new LiveMeasuring(
            program.recordFile(),
            stage,
            links.all(program),
            Records.start(program, operator),
            links.terms(program, waitSeconds),
            program.waitingTerms());
    try (SiteRecord record = Records.forMeasuring(program)) {
      StoredJob stored = StoredJob.load(record, job);
      StageWork work = StageWork.of(stored, stage, round());
      say(stored, work);
      Path capture = measuring.captureFile(stored);
      Guide.Order order = anyOrder ? Guide.Order.ANY : Guide.Order.LISTED;
      LiveSession.Ending ending =
          measuring.measure(
              record,
              stored,
              work.asked(),
              collector -> work.setting(collector, stored, record, order),
              new MeasureTalk(program.console().err(), work.stage().questions(), big, !silent),
              capture,
              live -> MeterLinks.readInput(program, live));
      finish(stored, ending, capture);
      measuring.requireWhole(stored, ending);
      return 0;
    }
  }

  private void say(StoredJob stored, StageWork work) {
    if (work.asked().isEmpty()) {
      throw new InputException(
          "All of stage "
              + stage
              + " of "
              + stored.key()
              + " is measured, and nothing more would decide anything. For a second visit give"
              + " --round 2 (or the next number); after something was moved say so with 'moved'.");
    }
    if (work.isGoingOn()) {
      program
          .console()
          .err()
          .printf(
              "%d of %d readings are in the record already; going on behind them.%n",
              work.all().size() - work.asked().size(), work.all().size());
    }
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
