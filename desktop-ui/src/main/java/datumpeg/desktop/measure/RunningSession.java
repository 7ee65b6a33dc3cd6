package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.collect.SpareFolders;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.collect.WaitingTerms;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.collect.WatchedTarget;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.OneWork;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One session: its thread, and what reaches it from the screen.
 *
 * <p>Used by the thread of the screen; closed by any other.
 */
final class RunningSession implements Sessions.Session, AutoCloseable {
  private final Path file;
  private final SessionStart start;
  private final ZoneId zone;
  private final Words words;
  private final Executor screen;
  private final LiveLinks opening;
  private final SpareFolders spares;
  private final SessionWish wish;
  private final Sessions.Told told;
  private final Function<Throwable, String> sentence;
  private final NewestValue<SessionShot> shots;
  private final List<String> early = new ArrayList<>();
  private final OneWork work;
  private @Nullable LiveSession live;

  /**
   * A session that has not begun.
   *
   * @param file of the record
   * @param screen hands over to the thread of the screen
   * @param sentence what is said of trouble that ended it
   */
  RunningSession(
      Path file,
      SessionStart start,
      ZoneId zone,
      Words words,
      Executor screen,
      LiveLinks opening,
      SpareFolders spares,
      SessionWish wish,
      Sessions.Told told,
      Function<Throwable, String> sentence) {
    this.file = file;
    this.start = start;
    this.zone = zone;
    this.words = words;
    this.screen = screen;
    this.opening = opening;
    this.spares = spares;
    this.wish = wish;
    this.told = told;
    this.sentence = sentence;
    this.shots = new NewestValue<>(screen, told::stands);
    this.work = new OneWork("measuring", this::run, this::failed);
  }

  void start() {
    work.start();
  }

  private void run() throws InterruptedException {
    try (SiteRecord record = SqliteRecords.openOnFullDiskToo(file)) {
      StoredJob stored = StoredJob.load(record, wish.job());
      LiveMeasuring measuring =
          new LiveMeasuring(file, wish.stage(), meters(), start, WaitingTerms.usual(spares));
      LiveSession.Ending ending =
          wish.isWatch() ? watch(record, stored, measuring) : measure(record, stored, measuring);
      String trouble = "";
      try {
        measuring.requireWhole(stored, ending);
      } catch (FailureException e) {
        trouble = String.valueOf(e.getMessage());
      }
      ended(trouble, ending.recordedCount());
    }
  }

  private LiveSession.Ending measure(SiteRecord record, StoredJob stored, LiveMeasuring measuring)
      throws InterruptedException {
    StageWork stage = StageWork.of(stored, wish.stage(), wish.round());
    if (stage.asked().isEmpty()) {
      throw new InputException(words.text("measure.all-measured"));
    }
    return measuring.measure(
        record,
        stored,
        asked(stage),
        collector -> stage.setting(collector, stored, record, wish.order()),
        scribe(stored, Optional.empty()),
        measuring.captureFile(stored),
        this::personIsThere);
  }

  private LiveSession.Ending watch(SiteRecord record, StoredJob stored, LiveMeasuring measuring)
      throws InterruptedException {
    WatchedTarget watched = WatchedTarget.of(stored, wish.stage(), wish.watched());
    return measuring.measure(
        record,
        stored,
        List.of(watched.wanted()),
        watched::setting,
        scribe(stored, Optional.of(watched)),
        measuring.captureFile(stored),
        this::personIsThere);
  }

  private SessionScribe scribe(StoredJob stored, Optional<WatchedTarget> watched) {
    return new SessionScribe(
        words,
        zone,
        stored.job().setOut(),
        stored.job().stage(wish.stage()).map(Stage::questions).orElse(Map.of()),
        watched.map(target -> target.deviation(stored)),
        meters(),
        shots::put);
  }

  private List<MeterLink> meters() {
    MeterProfiles profiles = new MeterProfiles(file.resolveSibling("meters"));
    List<MeterLink> meters = new ArrayList<>();
    for (SessionWish.LinkWish link : wish.links()) {
      LinkAddress address = LinkAddress.parse(link.address());
      if (address instanceof LinkAddress.Replay) {
        throw new InputException(words.text("measure.not-live", link.address()));
      } else if (!(address instanceof LinkAddress.Keyboard)) {
        meters.add(
            MeterLink.of(
                "L" + (meters.size() + 1),
                link.address(),
                address,
                profiles.named(link.profile()),
                opening));
      }
    }
    return meters;
  }

  /** What is asked for, beginning at or behind the target that was asked for last. */
  private List<Wanted> asked(StageWork stage) {
    List<String> names = stage.all().stream().map(Wanted::name).toList();
    int last = names.indexOf(wish.from());
    List<Wanted> asked = new ArrayList<>(stage.asked());
    long before = asked.stream().takeWhile(each -> names.indexOf(each.name()) < last).count();
    Collections.rotate(asked, -(int) before);
    return asked;
  }

  private void personIsThere(LiveSession session) {
    session.expectInput();
    synchronized (this) {
      live = session;
      early.forEach(session::typed);
    }
  }

  @Override
  public synchronized void typed(String line) {
    LiveSession session = live;
    if (session == null) {
      early.add(line);
    } else {
      session.typed(line);
    }
  }

  @Override
  public void end() {
    typed("quit");
  }

  /** Waits a few seconds for the end that was asked for. */
  @Override
  public void close() {
    work.close();
  }

  private void failed(Throwable trouble) {
    ended(sentence.apply(trouble), 0);
  }

  /** Behind every shot: both go over the same executor, in order. */
  private void ended(String trouble, long recordedCount) {
    screen.execute(() -> told.ended(trouble, recordedCount));
  }
}
