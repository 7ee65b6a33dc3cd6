package datumpeg.desktop.app;

import datumpeg.desktop.findings.FindingsView;
import datumpeg.desktop.findings.FindingsViewModel;
import datumpeg.desktop.jobs.JobsView;
import datumpeg.desktop.jobs.JobsViewModel;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import datumpeg.desktop.trend.TrendView;
import datumpeg.desktop.trend.TrendViewModel;
import java.net.URL;
import java.time.ZoneId;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import javafx.scene.Scene;
import javafx.stage.Stage;

/**
 * Puts the window together: screens, their view models, and which of them follows which.
 *
 * <p>The JavaFX thread only.
 */
final class DesktopWindow {
  private static final double WIDTH = 1280;
  private static final double HEIGHT = 800;

  private final Words words;
  private final WindowViewModel window;
  private final JobsViewModel jobs;
  private final FindingsViewModel findings;
  private final TrendViewModel trend;
  private final Consumer<String> chosen;
  private final WindowView view;
  private String job;

  /**
   * The window before its first state.
   *
   * @param job opened at once; empty for the list of jobs
   * @param chosen is told each job that is opened
   */
  DesktopWindow(Words words, ZoneId zone, String job, Consumer<String> chosen) {
    this.words = words;
    this.chosen = chosen;
    this.job = job;
    this.window = new WindowViewModel(words, zone);
    this.jobs = new JobsViewModel(words, zone, this::open);
    this.findings = new FindingsViewModel(words);
    this.trend = new TrendViewModel(words);
    this.view =
        new WindowView(
            window,
            Map.of(
                Screen.JOBS, new JobsView(jobs),
                Screen.FINDINGS, new FindingsView(findings),
                Screen.TREND, new TrendView(trend)));
    if (!job.isEmpty()) {
      findings.choose(job, "");
      trend.choose(job);
      window.screen().set(Screen.FINDINGS);
    }
  }

  /** Brings every screen to a new state of the record. */
  void show(RecordState state) {
    if (job.isEmpty() && !state.jobs().isEmpty()) {
      choose(state.jobs().get(0).row().id(), "");
    }
    window.show(state);
    jobs.show(state);
    findings.show(state);
    trend.show(state);
  }

  /** Shows the window. */
  void openOn(Stage stage) {
    Scene scene = new Scene(view, WIDTH, HEIGHT);
    URL style =
        Objects.requireNonNull(
            DesktopWindow.class.getResource("/datumpeg/desktop/control/window.css"),
            "The resource window.css is missing.");
    scene.getStylesheets().add(style.toExternalForm());
    stage.setTitle(words.text("window.title"));
    stage.setScene(scene);
    stage.show();
  }

  /** Which screen is shown. */
  WindowViewModel window() {
    return window;
  }

  /** Shows a job's findings; an empty stage is the latest that was measured. */
  void open(String newJob, String stage) {
    choose(newJob, stage);
    window.screen().set(Screen.FINDINGS);
  }

  private void choose(String newJob, String stage) {
    job = newJob;
    findings.choose(newJob, stage);
    trend.choose(newJob);
    chosen.accept(newJob);
  }
}
