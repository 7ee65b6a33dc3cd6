package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.collect.UnattendedSession;
import datumpeg.bridge.collect.UnattendedSession.Standing;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.LinkTimer;
import datumpeg.bridge.record.SiteRecord;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code collect}. */
@Command(
    name = "collect",
    description = {
      "Take what meters send with nobody there, until it is told to end (Ctrl-C, SIGTERM).",
      "A value whose target is beyond doubt is recorded; the others wait in a table for a person.",
      "A link that is away is opened as soon as it is there."
    })
final class CollectCommand implements Callable<Integer> {
  private static final long ENDING_SECONDS = 20;

  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Option(names = "--stage", paramLabel = "STAGE", required = true, description = "The stage.")
  private String stage = "";

  @Option(names = "--by", paramLabel = "NAME", description = "Who answers for the readings.")
  private String operator = "";

  @Option(
      names = "--round",
      paramLabel = "N",
      description = "Record as round N: a second visit is round 2.")
  private @Nullable Integer round;

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      description = "End by itself after so long (default: when it is told to).")
  private @Nullable Integer forSeconds;

  @Mixin private final MeterLinks links = new MeterLinks();

  CollectCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    CountDownLatch ended = new CountDownLatch(1);
    try {
      return collect(ended);
    } finally {
      ended.countDown();
    }
  }

  private int collect(CountDownLatch ended) throws InterruptedException {
    List<MeterLink> meters = links.all(program);
    if (meters.isEmpty()) {
      throw new InputException("There is nobody to type: 'collect' needs at least one --link.");
    }
    LiveMeasuring measuring =
        new LiveMeasuring(
            program.recordFile(),
            stage,
            meters,
            Records.start(program, operator),
            links.terms(program, 0),
            program.waitingTerms());
    Optional<Duration> lasting =
        Optional.ofNullable(forSeconds).map(value -> MeterLinks.seconds("--for", value));
    try (LinkTimer timer = LinkTimer.onThread("end of collect");
        SiteRecord record = Records.forMeasuring(program)) {
      StoredJob stored = StoredJob.load(record, job);
      StageWork work =
          StageWork.of(stored, stage, round == null ? OptionalInt.empty() : OptionalInt.of(round));
      Path capture = measuring.captureFile(stored);
      CollectTalk talk = new CollectTalk(program.console().err());
      Standing ending =
          measuring.collect(
              record,
              stored,
              work,
              talk,
              capture,
              session -> {
                endOnRequest(session, ended);
                lasting.ifPresent(time -> timer.after(time, session::stop));
              },
              talk::stands);
      finish(stored, ending, capture);
      requireStored(ending);
      return 0;
    }
  }

  private static void requireStored(Standing ending) {
    if (ending.waitingCount() + ending.unassignedWaitingCount() > 0) {
      throw new OuterWorldException(
          ending.waitingCount()
              + " reading(s) and "
              + ending.unassignedWaitingCount()
              + " value(s) without a target could not be stored yet; "
              + (ending.waitingOnDisk()
                  ? "they are stored when this stage is measured or collected next."
                  : "not all of them could be written to any disk: those are in the capture only, as"
                      + " far as it could be kept."));
    }
  }

  /** When the program is told to end, the session does first, and the record is closed. */
  private static void endOnRequest(UnattendedSession session, CountDownLatch ended) {
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  session.stop();
                  try {
                    if (!ended.await(ENDING_SECONDS, TimeUnit.SECONDS)) {
                      return; // what was acknowledged is recorded all the same
                    }
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                },
                "end of collect"));
  }

  private void finish(StoredJob stored, Standing ending, Path capture) {
    Path table = LiveMeasuring.unassignedFile(capture);
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", stored.key().job())
              .put("stage", stage)
              .put("readingCount", ending.recordedCount())
              .put("unassignedCount", ending.unassignedCount())
              .put("unassigned", ending.unassignedCount() == 0 ? "" : table.toString())
              .put("capture", capture.toString())
              .build());
      return;
    }
    program
        .console()
        .out()
        .printf(
            "Recorded %d reading(s) of %s, stage %s. The raw bytes are in %s.%n",
            ending.recordedCount(), stored.key(), stage, capture);
    if (ending.lostCount() > 0) {
      program
          .console()
          .err()
          .printf(
              "%d value(s) without a target are in no table, and only in the capture, as far as it"
                  + " could be kept.%n",
              ending.lostCount());
    }
    if (ending.unassignedCount() > 0) {
      program
          .console()
          .out()
          .printf(
              "%d value(s) have no target yet: complete %s and take it in with 'enter %s'.%n",
              ending.unassignedCount(), table, stored.key().job());
    }
  }
}
