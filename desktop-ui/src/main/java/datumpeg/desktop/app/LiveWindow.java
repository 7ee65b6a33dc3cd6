package datumpeg.desktop.app;

import datumpeg.desktop.background.NewestValue;
import datumpeg.desktop.background.RepeatedWork;
import datumpeg.desktop.source.JobSource;
import datumpeg.desktop.source.RecordFollower;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Locale;
import javafx.application.Platform;
import javafx.stage.Stage;

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
  private static final Duration PAUSE = Duration.ofMillis(150);

  private final Words words = Words.of(Locale.getDefault());
  private final DesktopWindow window;
  private final RecordFollower follower;
  private final RepeatedWork following;

  /**
   * The window, not yet open.
   *
   * @param file the record's path, to be shown
   * @param job opened at once; empty for the list of jobs
   */
  LiveWindow(String file, JobSource.Opening opening, String job, Clock clock, ZoneId zone) {
    window = new DesktopWindow(words, zone, job, this::prefer);
    NewestValue<RecordState> handOver = new NewestValue<>(Platform::runLater, window::show);
    follower = new RecordFollower(file, opening, clock, handOver::put);
    follower.preferred(job);
    following =
        new RepeatedWork(
            "record follower", PAUSE, follower::turn, follower::close, this::defective);
  }

  void openOn(Stage stage) {
    window.openOn(stage);
    following.start();
  }

  DesktopWindow window() {
    return window;
  }

  @Override
  public void close() {
    following.close();
  }

  private void prefer(String job) {
    follower.preferred(job);
  }

  private void defective(Throwable defect) {
    LOG.log(Level.ERROR, "The record could not be followed.", defect);
    follower.failed(words.text("window.defect", defect.getClass().getSimpleName()));
  }
}
