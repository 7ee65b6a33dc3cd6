package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.SiteRecordOpening;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TableView;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window on a real record, written to by the program's own commands while it is open. */
class LiveWindowTest {
  @TempDir static Path folder;

  private final Stage stage;
  private final List<LiveWindow> opened = new ArrayList<>();

  LiveWindowTest() {
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(stage::close);
    opened.forEach(LiveWindow::close);
  }

  private LiveWindow open(Path file, String job) {
    return HeadlessToolkit.on(
        () -> {
          LiveWindow window =
              new LiveWindow(
                  file.toString(),
                  new SiteRecordOpening(file),
                  job,
                  new SettingsFile(file.resolveSibling(file.getFileName() + ".settings")),
                  Clock.systemUTC(),
                  ZoneOffset.UTC);
          opened.add(window);
          window.openOn(stage);
          return window;
        });
  }

  private List<String> texts(String styleClass) {
    return HeadlessToolkit.on(
        () ->
            HeadlessToolkit.find(
                    stage.getScene().getRoot(),
                    node -> node.getStyleClass().contains(styleClass) && shown(node))
                .stream()
                .map(node -> ((Labeled) node).getText())
                .toList());
  }

  private static boolean shown(Node node) {
    for (Node each = node; each != null; each = each.getParent()) {
      if (!each.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private void untilSaid(String styleClass, String beginning) {
    HeadlessToolkit.until(
        styleClass + " says " + beginning,
        () -> texts(styleClass).stream().anyMatch(text -> text.startsWith(beginning)));
  }

  private void untilListed(String outcome) {
    HeadlessToolkit.until(
        outcome,
        () ->
            stage.getScene().lookup("#outcomes") instanceof TableView<?> outcomes
                && outcomes.getItems().toString().contains(outcome));
  }

  @Test
  void readingsCommittedByAnotherConnectionComeOnScreenByThemselves() {
    Path file = folder.resolve("live.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    List<String> steps = sample.steps();
    LiveWindow window = open(file, "larkrise-01");
    untilSaid("sentence", "The record holds no job larkrise-01.");
    sample.run(steps.get(0));
    untilSaid("sentence", "Nothing was measured in this job yet.");
    sample.run(steps.get(1));
    HeadlessToolkit.until("an answer for the slab", () -> !texts("answer").isEmpty());
    untilListed("check=Slab squareness");
    sample.run(steps.get(2));
    untilListed("check=Slab level, spread");
    HeadlessToolkit.run(() -> window.window().window().screen().set(Screen.JOBS));
    HeadlessToolkit.picture(stage.getScene());
    List<String> jobs = HeadlessToolkit.spokenJobs(stage.getScene());
    assertEquals(1, jobs.size());
    assertTrue(jobs.get(0).startsWith("Hay shed, Larkrise Farm. "), jobs.get(0));
  }

  /** A thing that was moved and measured again gives a trend with both rounds. */
  @Test
  void movedColumnShowsBothItsRounds() {
    Path file = folder.resolve("rounds.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.runAll();
    LiveWindow window = open(file, "larkrise-01");
    HeadlessToolkit.until("an answer", () -> !texts("answer").isEmpty());
    HeadlessToolkit.run(() -> window.window().window().screen().set(Screen.TREND));
    HeadlessToolkit.until("changes in words", () -> !texts("change").isEmpty());
    assertTrue(
        texts("change").stream().anyMatch(text -> text.contains("round 2")),
        texts("change").toString());
  }

  @Test
  void fileThatIsNoRecordIsSaidAndARecordInItsPlaceIsTaken() throws IOException {
    Path file = folder.resolve("other.db");
    Files.writeString(
        file, "This is a shopping list, not a record, and it is long enough to be one.");
    open(file, "");
    HeadlessToolkit.until(
        "a sentence on the file", () -> texts("sentence").toString().contains("other.db"));
    assertFalse(texts("sentence").toString().contains("Exception"));
    Path record = folder.resolve("moved-here.db");
    SampleJob.of("quarrybend-02", record).run("job add job.toml");
    Files.delete(file);
    Files.move(record, file);
    HeadlessToolkit.until(
        "the job", () -> HeadlessToolkit.spokenJobs(stage.getScene()).size() == 1);
  }

  @Test
  void recordThatIsTakenAwayLeavesWhatWasReadAndASentence() throws IOException {
    Path file = folder.resolve("away.db");
    SampleJob.of("quarrybend-02", file).run("job add job.toml");
    open(file, "");
    HeadlessToolkit.until(
        "the job", () -> HeadlessToolkit.spokenJobs(stage.getScene()).size() == 1);
    Files.move(file, folder.resolve("elsewhere.db"));
    untilSaid("trouble", "There is no record");
    assertEquals(1, HeadlessToolkit.spokenJobs(stage.getScene()).size());
    Files.move(folder.resolve("elsewhere.db"), file);
    HeadlessToolkit.until("no trouble", () -> texts("trouble").isEmpty());
  }
}
