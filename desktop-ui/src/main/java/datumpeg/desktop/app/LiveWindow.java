package datumpeg.desktop.app;

import datumpeg.bridge.cli.ProgramVersion;
import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.RepeatedWork;
import datumpeg.desktop.findings.RecordRows;
import datumpeg.desktop.form.RecordJobShelf;
import datumpeg.desktop.measure.RecordSessions;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.signoff.RecordDesk;
import datumpeg.desktop.source.JobSource;
import datumpeg.desktop.source.RecordFollower;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;

/**
 * A window and the thread that follows its record. The thread reads, reduces and hands over; the
 * JavaFX thread only shows.
 *
 * <p>Made and opened on the JavaFX thread; closed on any other, since closing waits for a turn to
 * end.
 */
final class LiveWindow implements AutoCloseable {
  private static final Logger LOG = System.getLogger(LiveWindow.class.getName());

  /** How often the record is asked whether rows were added. */
  private static final Duration PAUSE = Duration.ofMillis(20);

  private final Words words = Words.of(Locale.getDefault());
  private final SettingsKeeper settings;
  private final RecordSessions sessions;
  private final RecordFollower follower;
  private final RepeatedWork following;
  private final DesktopWindow window;
  private volatile @Nullable RecordState newest;

  /**
   * The window, not yet open.
   *
   * @param file the record's path, to be shown
   * @param job opened at once; empty for what was shown last
   * @param settingsFile how the user wants the window, and what was shown last
   */
  LiveWindow(
      String file,
      JobSource.Opening opening,
      String job,
      SettingsFile settingsFile,
      Clock clock,
      ZoneId zone) {
    settings = new SettingsKeeper(settingsFile);
    sessions =
        new RecordSessions(
            Path.of(file), ProgramVersion.number(), clock, zone, words, Platform::runLater);
    NewestValue<RecordState> handOver = new NewestValue<>(Platform::runLater, this::show);
    follower = new RecordFollower(file, opening, clock, state -> publish(state, handOver));
    following =
        new RepeatedWork(
            "record follower", PAUSE, follower::turn, follower::close, this::defective);
    following.start(); // the record is read while the window is put together
    window =
        new DesktopWindow(
            words,
            zone,
            startingWith(settingsFile.load(), file, job),
            sessions,
            new RecordRows(
                Path.of(file), ProgramVersion.number(), clock, zone, words, Platform::runLater),
            new RecordDesk(Path.of(file), ProgramVersion.number(), clock),
            new RecordJobShelf(Path.of(file), ProgramVersion.number(), clock),
            settings::keep,
            this::prefer);
    window.onAllJobsWanted(this::allJobsWanted);
  }

  /** What was shown of another record last says nothing about this one. */
  private static SettingsFile.Loaded startingWith(
      SettingsFile.Loaded found, String file, String job) {
    Settings settings = found.settings();
    if (!settings.last("record").equals(file)) {
      settings =
          settings.withLast(
              Map.of(
                  "record",
                  file,
                  "job",
                  "",
                  "stage",
                  "",
                  "screen",
                  "jobs",
                  "measure.left.job",
                  ""));
    }
    if (!job.isEmpty()) {
      settings = settings.withLast(Map.of("job", job, "stage", "", "screen", "findings"));
    }
    return new SettingsFile.Loaded(settings, found.trouble());
  }

  private void allJobsWanted(boolean wanted) {
    follower.outcomesWanted(wanted);
    following.hurry();
  }

  private void prefer(String job) {
    follower.preferred(job);
    following.hurry();
  }

  private void publish(RecordState state, NewestValue<RecordState> handOver) {
    newest = state;
    handOver.put(state);
  }

  private void show(RecordState state) {
    window.show(state);
  }

  /** What was read by now is laid out with the window itself, not after it. */
  void openOn(Stage stage) {
    RecordState read = newest;
    if (read != null) {
      window.show(read);
    }
    window.openOn(stage);
  }

  DesktopWindow window() {
    return window;
  }

  @Override
  public void close() {
    sessions.close();
    following.close();
    settings.close();
  }

  private void defective(Throwable defect) {
    LOG.log(Level.ERROR, "The record could not be followed.", defect);
    follower.failed(words.text("window.defect", defect.getClass().getSimpleName()));
  }
}
