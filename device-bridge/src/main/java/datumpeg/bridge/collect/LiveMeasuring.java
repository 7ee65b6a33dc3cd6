package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * One session of measuring with live links and a person, whoever shows it: record, capture, links.
 * One thread.
 */
public final class LiveMeasuring {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssSSS'Z'").withZone(ZoneOffset.UTC);

  private final Path recordFile;
  private final String stage;
  private final List<MeterLink> links;
  private final SessionStart start;
  private final LinkTerms terms;

  /** A session that has not begun, on the usual terms with its links. */
  public LiveMeasuring(Path recordFile, String stage, List<MeterLink> links, SessionStart start) {
    this(recordFile, stage, links, start, LinkTerms.USUAL);
  }

  /**
   * A session that has not begun.
   *
   * @param recordFile beside which captures and waiting readings are kept
   * @param start who measures, with which clock
   */
  public LiveMeasuring(
      Path recordFile, String stage, List<MeterLink> links, SessionStart start, LinkTerms terms) {
    this.terms = terms;
    this.recordFile = recordFile;
    this.stage = stage;
    this.links = List.copyOf(links);
    this.start = start;
  }

  /**
   * Measures the list.
   *
   * @param setting is made of the collector that stores
   * @param person is given the session when its links are open; whoever types says so to it
   * @throws InterruptedException if the thread is interrupted; everything acknowledged is recorded
   */
  public LiveSession.Ending measure(
      SiteRecord record,
      StoredJob stored,
      List<Wanted> list,
      Function<Collector, GuideSetting> setting,
      SessionWatcher watcher,
      Path captureFile,
      Consumer<LiveSession> person)
      throws InterruptedException {
    try (RecordSession session = record.openSession(start);
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
              new TimeOrderedIds(start.clock()),
              start.operator());
      LiveSession live =
          new LiveSession(
              setting.apply(collector),
              store,
              capture,
              captureFile.toFile().getName(),
              clock,
              terms.patience(),
              watcher);
      LiveSession.Ending ending = run(live, clock, person);
      if (ending.waitingCount() == 0) {
        SessionCaptures.name(
            recordFile.resolveSibling("captures"), stored.key(), stage, record, session);
      }
      return ending;
    }
  }

  private LiveSession.Ending run(LiveSession live, LinkClock clock, Consumer<LiveSession> person)
      throws InterruptedException {
    List<Link> open = new ArrayList<>();
    try {
      for (MeterLink link : links) {
        MeterStream stream = new MeterStream(link.profile());
        open.add(
            link.open(
                clock,
                terms.silence(),
                live.listenerFor(link.name(), link.address().text(), "", stream)));
      }
      person.accept(live);
      return live.run();
    } finally {
      live.stopListening();
      open.forEach(Link::close);
    }
  }

  private CaptureHeader header(StoredJob stored) {
    Map<String, CaptureHeader.CapturedLink> captured = new LinkedHashMap<>();
    links.forEach(
        link ->
            captured.put(
                link.name(),
                new CaptureHeader.CapturedLink(
                    link.address().text(), null, link.profile().identity())));
    return new CaptureHeader(stored.key().job(), stage, captured);
  }

  private Path waitingFile(StoredJob stored) {
    return recordFile
        .resolveSibling("captures")
        .resolve("waiting-" + stored.key().job() + "-" + stage + ".jsonl");
  }

  /** A new file for the raw bytes of a session that begins now. */
  public Path captureFile(StoredJob stored) {
    Instant now = Instant.now(start.clock());
    Path folder = recordFile.resolveSibling("captures");
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The folder " + folder + " for captures could not be made: " + e.getMessage() + ".", e);
    }
    String name = stored.key().job() + "-" + stage + "-" + STAMP.format(now);
    Path file = folder.resolve(name + ".capture.jsonl");
    // A computer's clock may have been set back: a name that is taken is no reason not to measure.
    for (int i = 2; Files.exists(file); i++) {
      file = folder.resolve(name + "-" + i + ".capture.jsonl");
    }
    return file;
  }

  /**
   * Says what is not as it should be at the end.
   *
   * @throws OuterWorldException if readings wait or a lost link ended the session
   */
  public void requireWhole(StoredJob stored, LiveSession.Ending ending) {
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
