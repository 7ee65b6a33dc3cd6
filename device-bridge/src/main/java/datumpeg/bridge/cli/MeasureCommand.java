package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.collect.Collector;
import datumpeg.bridge.collect.LiveSession;
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
import datumpeg.bridge.record.entry.CaptureEntry;
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
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code measure}. */
@Command(
    name = "measure",
    description = {
      "Measure a stage's targets one by one: readings come from links and the keyboard.",
      "Type a value, or skip, back, undo, quit. Each reading is stored before the next is asked for."
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
      Path capture = captureFile(stored, Instant.now(program.console().clock()));
      LiveSession.Ending ending = measure(record, stored, chosen, list, serial, capture);
      finish(stored, ending, capture);
      return 0;
    }
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
      Collector collector =
          new Collector(
              stored.job(),
              chosen.id(),
              list,
              stored.moved(),
              stored.key(),
              session,
              new TimeOrderedIds(program.console().clock()),
              operator);
      LiveSession live =
          new LiveSession(
              collector, capture, LinkClock.system(), new MeasureTalk(program.console().err()));
      openLinks(serial, live, open);
      readInput(live);
      LiveSession.Ending ending = live.run();
      session.append(
          stored.key(),
          new CaptureEntry(
              captureFile.toFile().getName(), CaptureIntake.sha256(captureFile), stage));
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
      Map<String, LinkAddress.Serial> serial, LiveSession live, List<Link> open) {
    serial.forEach(
        (name, address) -> {
          MeterStream stream = new MeterStream(profile(open.size()));
          LinkListener listener = live.listenerFor(name, address.text(), "", stream);
          open.add(SerialLink.open(address, LinkClock.system(), listener));
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

  private Path captureFile(StoredJob stored, Instant now) {
    Path folder = program.recordFile().resolveSibling("captures");
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The folder " + folder + " for captures could not be made: " + e.getMessage() + ".", e);
    }
    return folder.resolve(
        stored.key().job() + "-" + stage + "-" + STAMP.format(now) + ".capture.jsonl");
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
