package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.collect.Collector;
import datumpeg.bridge.collect.FurtherReadings;
import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.collect.GuideSetting;
import datumpeg.bridge.collect.HoldRule;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.ReadingStore;
import datumpeg.bridge.collect.SessionCaptures;
import datumpeg.bridge.collect.SteadyClock;
import datumpeg.bridge.collect.WaitingFile;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.link.serial.SerialLink;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
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
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssSSS'Z'").withZone(ZoneOffset.UTC);

  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Option(names = "--stage", paramLabel = "STAGE", required = true, description = "The stage.")
  private String stage = "";

  @Option(
      names = "--link",
      paramLabel = "LINK",
      description = "serial:PATH[?baud=9600&bits=8&parity=n&stop=1] or keyboard: (default).")
  private List<String> links = new ArrayList<>();

  @Option(
      names = "--meter",
      paramLabel = "PROFILE",
      description = "How the meter on the link before it speaks (default general-text-line).")
  private List<String> profiles = new ArrayList<>();

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

  MeasureCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() throws InterruptedException {
    Map<String, LinkAddress.Serial> serial = serialLinks();
    try (SiteRecord record = Records.forWriting(program)) {
      StoredJob stored = StoredJob.load(record, job);
      Stage chosen = CaptureIntake.stage(stored, stage);
      List<Wanted> list = Wanted.of(MeasuringList.of(stored.job().setOut(), chosen));
      if (list.isEmpty()) {
        throw new InputException(
            "The stage " + stage + " of " + stored.key() + " has no targets to measure.");
      }
      list = open(stored, list);
      Path capture = captureFile(stored, Instant.now(program.console().clock()));
      LiveSession.Ending ending = measure(record, stored, chosen, list, serial, capture);
      finish(stored, ending, capture);
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

  private Map<String, LinkAddress.Serial> serialLinks() {
    Map<String, LinkAddress.Serial> serial = new LinkedHashMap<>();
    for (String text : links) {
      LinkAddress address = LinkAddress.parse(text);
      if (address instanceof LinkAddress.Serial port) {
        serial.put("L" + (serial.size() + 1), settled(text, port, profile(serial.size())));
      } else if (address instanceof LinkAddress.Replay) {
        throw new InputException(
            "'" + text + "' is a capture; use 'replay " + job + " --stage " + stage + "' for it.");
      }
    }
    if (profiles.size() > serial.size()) {
      throw new InputException(
          "There are "
              + profiles.size()
              + " --meter options for "
              + serial.size()
              + " serial links; expected at most one for each.");
    }
    return serial;
  }

  /** A link that says nothing of its line is set up as its meter's profile says. */
  private static LinkAddress.Serial settled(
      String text, LinkAddress.Serial port, MeterProfile profile) {
    return text.contains("?") ? port : new LinkAddress.Serial(port.path(), profile.serial());
  }

  private MeterProfile profile(int position) {
    return position < profiles.size()
        ? Records.profiles(program).named(profiles.get(position))
        : MeterProfiles.GENERAL_TEXT_LINE;
  }

  private LiveSession.Ending measure(
      SiteRecord record,
      StoredJob stored,
      Stage chosen,
      List<Wanted> list,
      Map<String, LinkAddress.Serial> serial,
      Path captureFile)
      throws InterruptedException {
    List<Link> open = new ArrayList<>();
    try (RecordSession session = record.openSession(Records.start(program, operator));
        CaptureWriter capture = CaptureWriter.create(captureFile, header(stored, chosen, serial))) {
      ReadingStore store =
          ReadingStore.queueing(
              session, stored.key(), WaitingFile.of(waitingFile(stored), record.log(stored.key())));
      LinkClock clock = new SteadyClock(LinkClock.system());
      Collector collector =
          new Collector(
              stored.job(),
              chosen.id(),
              list,
              stored.moved(),
              store,
              new TimeOrderedIds(program.console().clock()),
              operator);
      LiveSession live =
          new LiveSession(
              new GuideSetting(
                  collector,
                  HoldRule.of(stored.job(), chosen),
                  anyOrder ? Guide.Order.ANY : Guide.Order.LISTED,
                  round(),
                  () -> new FurtherReadings(StoredJob.load(record, job), stage).wanted()),
              store,
              capture,
              captureFile.toFile().getName(),
              clock,
              new MeasureTalk(program.console().err(), big, !silent));
      openLinks(serial, live, open, clock);
      readInput(live);
      LiveSession.Ending ending = live.run();
      if (ending.waitingCount() == 0) {
        SessionCaptures.name(
            program.recordFile().resolveSibling("captures"), stored.key(), stage, record, session);
      }
      return ending;
    } finally {
      open.forEach(Link::close);
    }
  }

  private CaptureHeader header(
      StoredJob stored, Stage chosen, Map<String, LinkAddress.Serial> serial) {
    Map<String, CaptureHeader.CapturedLink> captured = new LinkedHashMap<>();
    serial.forEach(
        (name, address) ->
            captured.put(
                name,
                new CaptureHeader.CapturedLink(
                    address.text(), null, profile(captured.size()).identity())));
    return new CaptureHeader(stored.key().job(), chosen.id(), captured);
  }

  private void openLinks(
      Map<String, LinkAddress.Serial> serial, LiveSession live, List<Link> open, LinkClock clock) {
    serial.forEach(
        (name, address) -> {
          MeterStream stream = new MeterStream(profile(open.size()));
          LinkListener listener = live.listenerFor(name, address.text(), "", stream);
          open.add(SerialLink.open(address, clock, listener));
        });
  }

  /** The keyboard is always open: one line at a time, on a thread of its own. */
  private void readInput(LiveSession live) {
    live.expectInput();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(program.console().in(), StandardCharsets.UTF_8));
    Thread thread =
        new Thread(
            () -> {
              try {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                  live.typed(line);
                }
              } catch (IOException e) {
                live.typed("");
              } finally {
                live.inputEnded();
              }
            },
            "keyboard");
    thread.setDaemon(true);
    thread.start();
  }

  private Path waitingFile(StoredJob stored) {
    return program
        .recordFile()
        .resolveSibling("captures")
        .resolve("waiting-" + stored.key().job() + "-" + stage + ".jsonl");
  }

  private Path captureFile(StoredJob stored, Instant now) {
    Path folder = program.recordFile().resolveSibling("captures");
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The folder " + folder + " for captures could not be made: " + e.getMessage() + ".", e);
    }
    String start = stored.key().job() + "-" + stage + "-" + STAMP.format(now);
    Path file = folder.resolve(start + ".capture.jsonl");
    // A computer's clock may have been set back: a name that is taken is no reason not to measure.
    for (int i = 2; Files.exists(file); i++) {
      file = folder.resolve(start + "-" + i + ".capture.jsonl");
    }
    return file;
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
    if (ending.waitingCount() > 0) {
      throw new OuterWorldException(
          ending.waitingCount()
              + " reading(s) could not be stored yet; they wait in "
              + waitingFile(stored)
              + " and are stored when this stage is measured next.");
    }
    ending
        .loss()
        .ifPresent(
            loss -> {
              throw new OuterWorldException(
                  loss.getMessage()
                      + " Everything recorded is kept; run the command again to go on.",
                  loss);
            });
  }
}
