package datumpeg.bridge.collect;

import datumpeg.bridge.exchange.UnassignedTable;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.meter.UsedProfiles;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
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
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One session of measuring with live links and a person, whoever shows it: record, capture, links.
 * One thread.
 */
public final class LiveMeasuring {
  private static final Logger LOG = LoggerFactory.getLogger(LiveMeasuring.class);

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssSSS'Z'").withZone(ZoneOffset.UTC);

  private final Path recordFile;
  private final String stage;
  private final List<MeterLink> links;
  private final SessionStart start;
  private final LinkTerms terms;
  private final WaitingTerms waiting;

  /** A session that has not begun, on the usual terms with its links. */
  public LiveMeasuring(
      Path recordFile,
      String stage,
      List<MeterLink> links,
      SessionStart start,
      WaitingTerms waiting) {
    this(recordFile, stage, links, start, LinkTerms.USUAL, waiting);
  }

  /**
   * A session that has not begun.
   *
   * @param recordFile beside which captures and waiting readings are kept
   * @param start who measures, with which clock
   * @param waiting what is done while the disk of the record takes nothing
   */
  public LiveMeasuring(
      Path recordFile,
      String stage,
      List<MeterLink> links,
      SessionStart start,
      LinkTerms terms,
      WaitingTerms waiting) {
    this.terms = terms;
    this.waiting = waiting;
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
    RecordReturn back = RecordReturn.of(record, stored.key());
    WaitingFiles files = waitingFiles(record, stored, back);
    try (RecordSession session = record.openSession(start);
        WaitingFile<Entry> file = files.readings()) {
      file.keepRoom(WaitingFiles.ROOM_BYTES);
      ReadingStore store = ReadingStore.queueing(session, stored.key(), file, back);
      LiveSession.Ending ending;
      try (CaptureWriter capture = CaptureWriter.createWhenItCan(captureFile, header(stored))) {
        LinkClock clock = new SteadyClock(LinkClock.system());
        LiveSession live =
            new LiveSession(
                setting.apply(collector(stored, list, store)),
                store,
                capture,
                captureFile.toFile().getName(),
                clock,
                terms,
                waiting.pause(),
                watcher);
        keepProfiles(record, stored, store, back);
        takeLeftValues(files, captureFile, watcher);
        ending = run(stored, live, clock, person);
      }
      nameCaptures(record, session, stored, store);
      return ending;
    }
  }

  private LiveSession.Ending run(
      StoredJob stored, LiveSession live, LinkClock clock, Consumer<LiveSession> person)
      throws InterruptedException {
    List<Link> open = new ArrayList<>();
    try {
      for (MeterLink link : links) {
        MeterStream stream = new MeterStream(link.profile());
        String meter = UsedProfiles.meterName(stored.job(), link.profile());
        Link opened =
            (live.takesByItself() ? link.onDemand() : link)
                .open(
                    clock,
                    terms.silence(),
                    live.listenerFor(link.name(), link.address().text(), meter, stream));
        open.add(opened);
        if (link.canBeTold()) {
          live.onEmptyLine(() -> opened.send(link.profile().trigger()));
        }
      }
      person.accept(live);
      return live.run();
    } finally {
      live.stopListening();
      open.forEach(Link::close);
    }
  }

  /**
   * Takes what the links deliver with nobody there, until it is stopped.
   *
   * @param begun is given the session before it runs, so that it can be stopped
   * @param standing is told how it stands, after each event and every half minute
   * @throws InterruptedException if the thread is interrupted; everything acknowledged is recorded
   */
  public UnattendedSession.Standing collect(
      SiteRecord record,
      StoredJob stored,
      StageWork work,
      SessionWatcher watcher,
      Path captureFile,
      Consumer<UnattendedSession> begun,
      Consumer<UnattendedSession.Standing> standing)
      throws InterruptedException {
    RecordReturn back = RecordReturn.of(record, stored.key());
    WaitingFiles files = waitingFiles(record, stored, back);
    try (RecordSession session = record.openSession(start);
        WaitingFile<Entry> file = files.readings();
        WaitingFile<UnassignedTable.Row> rows = files.values()) {
      file.keepRoom(WaitingFiles.ROOM_BYTES);
      rows.keepRoom(WaitingFiles.ROOM_BYTES);
      ReadingStore store = ReadingStore.queueing(session, stored.key(), file, back);
      UnattendedSession.Standing ending;
      try (CaptureWriter capture = CaptureWriter.createWhenItCan(captureFile, header(stored))) {
        LinkClock clock = new SteadyClock(LinkClock.system());
        UnattendedSession unattended =
            new UnattendedSession(
                new UnattendedSession.Parts(
                    collector(stored, work.all(), store),
                    work.round(),
                    new Sorting(
                        work.all(),
                        Wanted.open(work.all(), stored, stage, work.round()),
                        HoldRule.of(stored.job(), work.stage())),
                    store,
                    capture,
                    captureFile.toFile().getName(),
                    new UnassignedStore(new UnassignedTable(unassignedFile(captureFile)), rows),
                    stage,
                    start.operator(),
                    clock,
                    waiting.pause(),
                    terms.apart()),
                watcher,
                standing);
        keepProfiles(record, stored, store, back);
        ending = run(stored, unattended, clock, begun);
      }
      nameCaptures(record, session, stored, store);
      return ending;
    }
  }

  private UnattendedSession.Standing run(
      StoredJob stored,
      UnattendedSession session,
      LinkClock clock,
      Consumer<UnattendedSession> begun)
      throws InterruptedException {
    List<Link> open = new ArrayList<>();
    try {
      begun.accept(session);
      for (MeterLink link : links) {
        MeterStream stream = new MeterStream(link.profile());
        open.add(
            link.openOrAwait(
                clock,
                terms.silence(),
                session.listenerFor(
                    link.name(),
                    link.address().text(),
                    UsedProfiles.meterName(stored.job(), link.profile()),
                    stream)));
      }
      return session.run();
    } finally {
      session.stopListening();
      open.forEach(Link::close);
    }
  }

  /** Where a session with this capture puts values that have no target yet. */
  public static Path unassignedFile(Path captureFile) {
    return SessionCaptures.tableBeside(captureFile);
  }

  private Collector collector(StoredJob stored, List<Wanted> list, ReadingStore store) {
    return new Collector(
        stored.job(),
        stage,
        list,
        stored.moved(),
        store,
        new TimeOrderedIds(start.clock()),
        start.operator());
  }

  /** What a collection that ended left without a target comes into a table here too. */
  private static void takeLeftValues(WaitingFiles files, Path captureFile, SessionWatcher watcher) {
    try (WaitingFile<UnassignedTable.Row> rows = files.values()) {
      UnassignedTable table = new UnassignedTable(unassignedFile(captureFile));
      if (!rows.leftOver().isEmpty() && new UnassignedStore(table, rows).drain()) {
        watcher.putAside(
            table.rowCount()
                + " value(s) without a target, which an earlier collection left, are in "
                + table.file());
      }
    }
  }

  private WaitingFiles waitingFiles(SiteRecord record, StoredJob stored, RecordReturn back) {
    return new WaitingFiles(recordFile, stored.key(), stage, waiting.spares(), record, back);
  }

  private void nameCaptures(
      SiteRecord record, RecordSession session, StoredJob stored, ReadingStore store) {
    if (store.waitingCount() == 0 && store.isRecordThere()) {
      SessionCaptures.name(
          recordFile.resolveSibling("captures"), stored.key(), stage, record, session);
    }
  }

  private CaptureHeader header(StoredJob stored) {
    Map<String, CaptureHeader.CapturedLink> captured = new LinkedHashMap<>();
    links.forEach(
        link ->
            captured.put(
                link.name(),
                new CaptureHeader.CapturedLink(
                    link.address().text(), named(stored, link), link.profile().identity())));
    return new CaptureHeader(stored.key().job(), stage, captured);
  }

  /**
   * What the profiles that know their instruments say now stands in the record from now on. It is
   * the last that is read of a record on a full disk.
   */
  private void keepProfiles(
      SiteRecord record, StoredJob stored, ReadingStore store, RecordReturn back) {
    List<MeterProfile> knowing =
        links.stream()
            .map(MeterLink::profile)
            .filter(profile -> profile.instrument() != null)
            .toList();
    Optional<JobLog> log =
        knowing.isEmpty() ? Optional.empty() : Optional.of(record.log(stored.key()));
    back.letGoOfFull();
    log.ifPresent(rows -> knowing.forEach(profile -> StoredProfiles.keep(profile, rows, store)));
  }

  private static @Nullable String named(StoredJob stored, MeterLink link) {
    String name = UsedProfiles.meterName(stored.job(), link.profile());
    return name.isEmpty() ? null : name;
  }

  /** A new file for the raw bytes of a session that begins now. */
  public Path captureFile(StoredJob stored) {
    Instant now = Instant.now(start.clock());
    Path folder = recordFile.resolveSibling("captures");
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      LOG.warn("the folder {} for captures could not be made", folder, e); // which each line says
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
                      + ending
                          .waitingIn()
                          .orElse(WaitingFiles.ofReadings(recordFile, stored.key(), stage))
                      + " and are stored when this stage is measured next."
                  : " reading(s) could not be stored, nor all of them be written to "
                      + WaitingFiles.ofReadings(recordFile, stored.key(), stage)
                      + " or to another disk; measure again what the next session asks for."));
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
