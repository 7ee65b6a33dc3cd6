package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.collect.LiveMeasuring;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.collect.WatchedTarget;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.serial.SerialPorts;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.OneWork;
import datumpeg.desktop.text.Words;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Sessions on a record file, each on a thread of its own.
 *
 * <p>Used by the thread of the screen; closed by any other.
 */
public final class RecordSessions implements Sessions {
  private static final Logger LOG = System.getLogger(RecordSessions.class.getName());

  private final Path file;
  private final String version;
  private final Clock clock;
  private final ZoneId zone;
  private final Words words;
  private final Executor screen;
  private volatile @Nullable Running running;
  private volatile @Nullable OneWork looking;
  private volatile boolean closed;

  /**
   * Sessions that write to the record.
   *
   * @param version of the program, for the record
   * @param screen hands over to the thread of the screen
   */
  public RecordSessions(
      Path file, String version, Clock clock, ZoneId zone, Words words, Executor screen) {
    this.file = file;
    this.version = version;
    this.clock = clock;
    this.zone = zone;
    this.words = words;
    this.screen = screen;
  }

  @Override
  public void look(String job, Consumer<Choices> found) {
    if (closed) {
      return;
    }
    NewestValue<Choices> handOver = new NewestValue<>(screen, found);
    OneWork work =
        new OneWork(
            "look for meters",
            () -> handOver.put(choices(job)),
            defect ->
                handOver.put(new Choices(job, List.of(), List.of(), List.of(), told(defect))));
    looking = work;
    work.start();
  }

  private Choices choices(String job) {
    List<Port> ports =
        SerialPorts.list().stream()
            .map(port -> new Port("serial:" + port.path(), clean(port.description())))
            .toList();
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      StoredJob stored = StoredJob.load(record, job);
      List<StageChoice> stages = new ArrayList<>();
      for (Stage stage : stored.job().stages()) {
        choice(stored, stage).ifPresent(stages::add);
      }
      return new Choices(job, stages, ports, profiles().ids(), "");
    } catch (FailureException e) {
      return new Choices(job, List.of(), ports, profiles().ids(), String.valueOf(e.getMessage()));
    }
  }

  /** Empty for a stage that asks for nothing. */
  private static Optional<StageChoice> choice(StoredJob stored, Stage stage) {
    List<Wanted> all = StageWork.all(stored, stage);
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new StageChoice(
                stage.id(),
                Wanted.open(all, stored, stage.id(), OptionalInt.empty()).size(),
                all.size(),
                all.stream().map(wanted -> wanted.target().text()).distinct().toList()));
  }

  /** A device chooses its own description. */
  private static String clean(String description) {
    return description.replaceAll("\\p{C}", "?");
  }

  private MeterProfiles profiles() {
    return new MeterProfiles(file.resolveSibling("meters"));
  }

  @Override
  public Session begin(SessionWish wish, Told told) {
    endRunning();
    Running fresh = new Running(wish, told);
    running = fresh;
    fresh.work.start();
    return fresh;
  }

  @Override
  public void close() {
    closed = true;
    endRunning();
    OneWork look = looking;
    if (look != null) {
      look.close();
    }
  }

  private void endRunning() {
    Running going = running;
    if (going != null) {
      going.end();
      going.work.close();
    }
  }

  private String told(Throwable trouble) {
    if (trouble instanceof FailureException) {
      return String.valueOf(trouble.getMessage());
    }
    LOG.log(Level.ERROR, "A session of measuring failed.", trouble);
    return words.text("window.defect", trouble.getClass().getSimpleName());
  }

  /** One session: its thread, and what reaches it from the screen. */
  private final class Running implements Session {
    private final SessionWish wish;
    private final Told told;
    private final NewestValue<SessionShot> shots;
    private final List<String> early = new ArrayList<>();
    private final OneWork work;
    private @Nullable LiveSession live;

    Running(SessionWish wish, Told told) {
      this.wish = wish;
      this.told = told;
      this.shots = new NewestValue<>(screen, told::stands);
      this.work = new OneWork("measuring", this::run, this::failed);
    }

    private void run() throws InterruptedException {
      try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
        StoredJob stored = StoredJob.load(record, wish.job());
        LiveMeasuring measuring =
            new LiveMeasuring(
                file, wish.stage(), meters(), new SessionStart(wish.operator(), version, clock));
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
          stage.asked(),
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
          watched.map(target -> target.deviation(stored)),
          meters(),
          shots::put);
    }

    private List<MeterLink> meters() {
      List<MeterLink> meters = new ArrayList<>();
      for (SessionWish.LinkWish link : wish.links()) {
        LinkAddress address = LinkAddress.parse(link.address());
        if (address instanceof LinkAddress.Serial serial) {
          meters.add(
              MeterLink.of(
                  "L" + (meters.size() + 1),
                  link.address(),
                  serial,
                  profiles().named(link.profile())));
        } else if (!(address instanceof LinkAddress.Keyboard)) {
          throw new InputException(words.text("measure.not-live", link.address()));
        }
      }
      return meters;
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

    private void failed(Throwable trouble) {
      ended(told(trouble), 0);
    }

    /** Behind every shot: both go over the same executor, in order. */
    private void ended(String trouble, long recordedCount) {
      screen.execute(() -> told.ended(trouble, recordedCount));
    }
  }
}
