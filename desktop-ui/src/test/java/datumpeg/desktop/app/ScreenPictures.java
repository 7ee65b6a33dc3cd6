package datumpeg.desktop.app;

import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.source.JobRow;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordFollower;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.source.SiteRecordOpening;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saves a picture of every screen, showing the sample jobs, under docs/pictures. Not part of the
 * build; docs/guide/window.md says how it is run.
 */
@Tag("pictures")
class ScreenPictures {
  private static final SettingsFile.Loaded USUAL = new SettingsFile.Loaded(Settings.usual(), "");

  private static final Instant HOUR = Instant.parse("2026-03-20T14:02:11Z");

  @TempDir Path folder;

  @Test
  void saveEveryScreen() throws IOException {
    Path pictures = root().resolve("docs/pictures");
    Files.createDirectories(pictures);
    Path file = folder.resolve("site.db");
    SampleJob.of("quarrybend-02", file).runAll();
    SampleJob.of("larkrise-01", file).runAll();
    RecordState state = read(file);
    HeadlessToolkit.start();
    Stage stage = HeadlessToolkit.on(Stage::new);
    DesktopWindow window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    Words.of(Locale.ROOT),
                    ZoneOffset.UTC,
                    USUAL,
                    new NoSessions(),
                    new NoRows(),
                    new NoDesk(),
                    new NoShelf(),
                    settings -> {},
                    job -> {}));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.show(state);
        });
    save(stage, pictures, "window-jobs");
    for (String shown : new String[] {"arrival", "lift", "tightening"}) {
      HeadlessToolkit.run(() -> window.open("larkrise-01", shown));
      HeadlessToolkit.untilDrawn(stage.getScene());
      save(stage, pictures, "window-findings-" + shown);
    }
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.TREND));
    save(stage, pictures, "window-trend");
    HeadlessToolkit.run(() -> window.open("larkrise-01", "lift"));
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.SIGN_OFF));
    save(stage, pictures, "window-sign-off");
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.TREND));
    saveOverJobs(stage, window, pictures, "");
    Path others = Files.createDirectories(root().resolve("desktop-ui/target/pictures"));
    for (Look look : Look.OTHERS) {
      HeadlessToolkit.run(() -> look.of(stage, window));
      HeadlessToolkit.run(() -> window.show(state));
      saveLook(stage, window, others, look.suffix());
      saveOverJobs(stage, window, others, look.suffix());
    }
    HeadlessToolkit.run(stage::close);
  }

  private static void saveLook(Stage stage, DesktopWindow window, Path folder, String suffix) {
    HeadlessToolkit.run(() -> window.open("larkrise-01", "lift"));
    for (Screen screen :
        new Screen[] {Screen.JOBS, Screen.TREND, Screen.SIGN_OFF, Screen.SETTINGS}) {
      HeadlessToolkit.run(
          () -> {
            window.window().screen().set(screen);
            if (stage.getScene().lookup("#trend-this-job") instanceof ToggleButton ofJob) {
              ofJob.fire();
            }
          });
      save(stage, folder, "window-" + screen.id() + suffix);
    }
  }

  private static Path root() {
    return Path.of(System.getProperty("datumpeg.root"));
  }

  /** The sample jobs are two; these are forty, invented. */
  private static void saveOverJobs(
      Stage stage, DesktopWindow window, Path pictures, String suffix) {
    HeadlessToolkit.run(
        () -> {
          window.window().screen().set(Screen.TREND);
          window.show(InventedCrews.withAnOddJob(40));
          ((ToggleButton) stage.getScene().lookup("#trend-over-jobs")).fire();
        });
    awaitText(stage, "jobs-points", "control limits");
    save(stage, pictures, "window-trend-over-jobs" + suffix);
    HeadlessToolkit.run(() -> window.window().screen().set(Screen.COMPARE));
    awaitText(stage, "compare-strips", "Amber: 20 jobs");
    save(stage, pictures, "window-compare" + suffix);
  }

  private static void awaitText(Stage stage, String id, String part) {
    HeadlessToolkit.until(
        part,
        () -> {
          Node node = stage.getScene().lookup("#" + id);
          return node != null && String.valueOf(node.getAccessibleText()).contains(part);
        });
  }

  /** As the window would, but with an hour and a path that are the same on every machine. */
  static RecordState read(Path file) {
    List<RecordState> states = new ArrayList<>();
    try (RecordFollower follower =
        new RecordFollower(
            "site.db",
            new SiteRecordOpening(file),
            Clock.fixed(HOUR, ZoneOffset.UTC),
            states::add)) {
      follower.preferred("larkrise-01");
      // A turn ends after a while, whatever is left to be worked out.
      for (int turn = 0; turn < 40; turn++) {
        follower.turn();
      }
    }
    RecordState state = states.get(states.size() - 1);
    return new RecordState(
        state.file(),
        state.reached(),
        state.trouble(),
        state.readAt(),
        state.jobs().stream().map(ScreenPictures::atThatHour).toList());
  }

  private static JobState atThatHour(JobState job) {
    JobRow row = job.row();
    return new JobState(
        new JobRow(row.id(), row.name(), Optional.of(HOUR), row.readingCount(), row.content()),
        job.overview(),
        job.work(),
        job.trouble(),
        job.settled(),
        job.outcomes());
  }

  /** With large letters the page is longer than the window: its end is looked at too. */
  private static void save(Stage stage, Path folder, String name) {
    HeadlessToolkit.save(
        HeadlessToolkit.picture(stage.getScene()), folder.resolve(name + ".png").toFile());
    if (name.endsWith("-200") && scroll(stage, 1)) {
      HeadlessToolkit.save(
          HeadlessToolkit.picture(stage.getScene()), folder.resolve(name + "-end.png").toFile());
      scroll(stage, 0);
    }
  }

  /** True if there is a page to be scrolled. */
  private static boolean scroll(Stage stage, double to) {
    return HeadlessToolkit.on(
        () -> {
          List<Node> pages =
              HeadlessToolkit.find(stage.getScene().getRoot(), node -> node instanceof ScrollPane);
          pages.forEach(page -> ((ScrollPane) page).setVvalue(to));
          return !pages.isEmpty();
        });
  }
}
