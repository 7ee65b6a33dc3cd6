package datumpeg.bridge.cli;

import datumpeg.bridge.collect.Collector;
import datumpeg.bridge.collect.GuideSetting;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.ReadingStore;
import datumpeg.bridge.collect.SessionCaptures;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.SteadyClock;
import datumpeg.bridge.collect.WaitingFile;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.link.serial.SerialLink;
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
import java.util.function.Function;

/**
 * One session of measuring with live links and the keyboard: record, capture, links, input. One
 * thread.
 */
final class LiveMeasuring {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssSSS'Z'").withZone(ZoneOffset.UTC);

  private final DatumpegCommand program;
  private final MeterLinks links;
  private final String operator;
  private final String stage;
  private final Map<String, LinkAddress.Serial> serial;

  LiveMeasuring(DatumpegCommand program, MeterLinks links, String operator, String stage) {
    this.program = program;
    this.links = links;
    this.operator = operator;
    this.stage = stage;
    this.serial = links.serial(program);
  }

  /** Measures the list; the setting is made of the collector that stores. */
  LiveSession.Ending measure(
      SiteRecord record,
      StoredJob stored,
      List<Wanted> list,
      Function<Collector, GuideSetting> setting,
      SessionWatcher talk,
      Path captureFile)
      throws InterruptedException {
    List<Link> open = new ArrayList<>();
    try (RecordSession session = record.openSession(Records.start(program, operator));
        CaptureWriter capture = CaptureWriter.create(captureFile, header(stored))) {
      ReadingStore store =
          ReadingStore.queueing(
              session, stored.key(), WaitingFile.of(waitingFile(stored), record.log(stored.key())));
      LinkClock clock = new SteadyClock(LinkClock.system());
      Collector collector =
          new Collector(
              stored.job(),
              stage,
              list,
              stored.moved(),
              store,
              new TimeOrderedIds(program.console().clock()),
              operator);
      LiveSession live =
          new LiveSession(
              setting.apply(collector),
              store,
              capture,
              captureFile.toFile().getName(),
              clock,
              talk);
      openLinks(live, open, clock);
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

  private CaptureHeader header(StoredJob stored) {
    Map<String, CaptureHeader.CapturedLink> captured = new LinkedHashMap<>();
    serial.forEach(
        (name, address) ->
            captured.put(
                name,
                new CaptureHeader.CapturedLink(
                    address.text(), null, links.profile(program, captured.size()).identity())));
    return new CaptureHeader(stored.key().job(), stage, captured);
  }

  private void openLinks(LiveSession live, List<Link> open, LinkClock clock) {
    serial.forEach(
        (name, address) -> {
          MeterStream stream = new MeterStream(links.profile(program, open.size()));
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

  /** A new file for the raw bytes of a session that begins now. */
  Path captureFile(StoredJob stored) {
    Instant now = Instant.now(program.console().clock());
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

  /**
   * Says what is not as it should be at the end.
   *
   * @throws OuterWorldException if readings wait or a lost link ended the session
   */
  void requireWhole(StoredJob stored, LiveSession.Ending ending) {
    if (ending.waitingCount() > 0) {
      throw new OuterWorldException(
          ending.waitingCount()
              + (ending.waitingOnDisk()
                  ? " reading(s) could not be stored yet; they wait in "
                      + waitingFile(stored)
                      + " and are stored when this stage is measured next."
                  : " reading(s) could not be stored, nor all of them be written to "
                      + waitingFile(stored)
                      + "; measure again what the next session asks for."));
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
