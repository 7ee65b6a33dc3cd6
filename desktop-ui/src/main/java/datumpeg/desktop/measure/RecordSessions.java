package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.bridge.cli.PlatformFolders;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.collect.StageWork;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.serial.SerialPorts;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.OneWork;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.text.Words;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
  private final LiveLinks opening;
  private volatile @Nullable RunningSession running;
  private volatile @Nullable OneWork looking;
  private volatile @Nullable MeterListening listening;
  private volatile boolean closed;

  /** Sessions that write to the record, with the links and disks of this machine. */
  public RecordSessions(
      Path file, String version, Clock clock, ZoneId zone, Words words, Executor screen) {
    this(file, version, clock, zone, words, screen, LiveLinks.of(System.getenv()));
  }

  /**
   * Sessions that write to the record.
   *
   * @param version of the program, for the record
   * @param screen hands over to the thread of the screen
   * @param opening how links of meters are opened
   */
  public RecordSessions(
      Path file,
      String version,
      Clock clock,
      ZoneId zone,
      Words words,
      Executor screen,
      LiveLinks opening) {
    this.opening = opening;
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

  @Override
  public void targets(SessionWish wish, Consumer<TargetStands> found) {
    NewestValue<TargetStands> handOver = new NewestValue<>(screen, found);
    new OneWork(
            "look for targets",
            () -> handOver.put(targets(wish)),
            trouble -> handOver.put(new TargetStands(List.of(), Map.of(), told(trouble))))
        .start();
  }

  private TargetStands targets(SessionWish wish) {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      StoredJob stored = StoredJob.load(record, wish.job());
      Stage stage = StageWork.of(stored, wish.stage(), wish.round()).stage();
      return new TargetLooking(stored, stage, wish.round()).stands();
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
                all.stream()
                    .filter(wanted -> !wanted.isQuestion())
                    .map(Wanted::target)
                    .map(target -> new Choice(target.text(), TargetWords.of(target)))
                    .distinct()
                    .toList()));
  }

  /** A device chooses its own description. */
  private static String clean(String description) {
    return description.replaceAll("\\p{C}", "?");
  }

  private MeterProfiles profiles() {
    return new MeterProfiles(file.resolveSibling("meters"));
  }

  @Override
  public void listen(Consumer<Heard> heard) {
    stopListening();
    if (closed) {
      return;
    }
    MeterListening fresh =
        new MeterListening(
            opening.backend(LinkAddress.Ble.Backend.BLUEZ),
            new NewestValue<>(screen, heard),
            this::told);
    listening = fresh;
    fresh.start();
  }

  @Override
  public void stopListening() {
    MeterListening going = listening;
    if (going != null) {
      going.stop();
    }
  }

  @Override
  public Session begin(SessionWish wish, Told told) {
    stopListening();
    endRunning();
    RunningSession fresh =
        new RunningSession(
            file,
            new SessionStart(wish.operator(), version, clock),
            zone,
            words,
            screen,
            opening,
            PlatformFolders.sparesOfThisProcess(),
            wish,
            told,
            this::told);
    running = fresh;
    fresh.start();
    return fresh;
  }

  @Override
  public void close() {
    closed = true;
    stopListening();
    endRunning();
    OneWork look = looking;
    if (look != null) {
      look.close();
    }
  }

  private void endRunning() {
    RunningSession going = running;
    if (going != null) {
      going.end();
      going.close();
    }
  }

  private String told(Throwable trouble) {
    if (trouble instanceof FailureException) {
      return String.valueOf(trouble.getMessage());
    }
    LOG.log(Level.ERROR, "A session of measuring failed.", trouble);
    return words.text("window.defect", trouble.getClass().getSimpleName());
  }
}
