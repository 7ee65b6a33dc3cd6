package datumpeg.desktop.app;

import datumpeg.desktop.findings.RecordRows;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.setting.Theme;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saves pictures of the findings of the sample jobs: every drawing of every stage, the readings
 * behind a number, a remedy that is ticked. The usual size of some lies under docs/pictures, all
 * else under target/pictures.
 */
@Tag("pictures")
class FindingsPictures {
  private static final Path ROOT = Path.of(System.getProperty("datumpeg.root"));
  private static final Path OTHERS = ROOT.resolve("desktop-ui/target/pictures");
  private static final Path DOCS = ROOT.resolve("docs/pictures");

  @TempDir Path folder;

  @Test
  void saveFindingsInEverySize() throws IOException {
    HeadlessToolkit.start();
    Files.createDirectories(OTHERS);
    Path file = folder.resolve("site.db");
    SampleJob.of("larkrise-01", file).runAll();
    save(file, Look.USUAL, List.of("arrival", "lift", "tightening"));
    for (Look look : Look.OTHERS) {
      save(file, look, look.theme() == Theme.DARK ? List.of("lift") : List.of("arrival", "lift"));
    }
  }

  private void save(Path file, Look look, List<String> stages) {
    String suffix = look.suffix();
    Stage stage = HeadlessToolkit.on(Stage::new);
    Words words = Words.of(Locale.ROOT);
    DesktopWindow window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    words,
                    ZoneOffset.UTC,
                    new SettingsFile.Loaded(look.of(Settings.usual()), ""),
                    new NoSessions(),
                    new RecordRows(
                        file, "test", Clock.systemUTC(), ZoneOffset.UTC, words, Platform::runLater),
                    new NoDesk(),
                    new NoShelf(),
                    changed -> {},
                    job -> {}));
    HeadlessToolkit.run(
        () -> {
          window.show(ScreenPictures.read(file));
          window.openOn(stage);
          stage.setWidth(look.width());
          stage.setHeight(look.height());
        });
    for (String each : stages) {
      HeadlessToolkit.run(() -> window.open("larkrise-01", each));
      drawings(stage, "window-findings-" + each + suffix);
    }
    behind(stage, suffix);
    HeadlessToolkit.run(stage::close);
  }

  private static void drawings(Stage stage, String name) {
    HeadlessToolkit.untilDrawn(stage.getScene());
    HeadlessToolkit.picture(stage.getScene());
    smaller(stage);
    int count = HeadlessToolkit.on(() -> choice(stage).size() - 1);
    save(stage, OTHERS, name);
    if (name.endsWith("-200")) { // the table is further down than the window reaches
      smaller(stage);
      HeadlessToolkit.picture(stage.getScene());
      HeadlessToolkit.run(() -> bringToTheTop(stage.getScene().lookup("#outcomes")));
      save(stage, OTHERS, name + "-table");
    }
    for (int index : IntStream.range(0, count).toArray()) {
      HeadlessToolkit.run(() -> choice(stage).get(index).fire());
      HeadlessToolkit.picture(stage.getScene());
      HeadlessToolkit.run(() -> bringToTheTop(stage.getScene().lookup(".drawing-choice")));
      save(stage, OTHERS, name + "-" + (index + 1));
    }
  }

  /** Brings back what a drawing that takes all the room hides. */
  private static void smaller(Stage stage) {
    HeadlessToolkit.run(
        () -> {
          ToggleButton larger = (ToggleButton) stage.getScene().lookup("#drawing-larger");
          if (larger.isSelected()) {
            larger.fire();
          }
        });
  }

  /** Where the page is longer than the window, as with large letters. */
  private static void bringToTheTop(Node node) {
    Node above = node;
    while (above != null && !(above instanceof ScrollPane)) {
      above = above.getParent();
    }
    if (above instanceof ScrollPane page) {
      double top = page.getContent().sceneToLocal(node.localToScene(0, 0)).getY();
      double beyond =
          page.getContent().getBoundsInLocal().getHeight() - page.getViewportBounds().getHeight();
      page.setVvalue(beyond > 0 ? Math.min(1, top / beyond) : 0);
    }
  }

  private static List<ToggleButton> choice(Stage stage) {
    FlowPane pane = (FlowPane) stage.getScene().lookup(".drawing-choice");
    return pane.getChildren().stream().map(button -> (ToggleButton) button).toList();
  }

  private static void behind(Stage stage, String suffix) {
    Path place = suffix.isEmpty() ? DOCS : OTHERS;
    smaller(stage);
    HeadlessToolkit.run(() -> ((CheckBox) stage.getScene().lookup(".cause-tick")).fire());
    HeadlessToolkit.picture(stage.getScene());
    HeadlessToolkit.run(() -> bringToTheTop(stage.getScene().lookup(".behind-and-plan")));
    save(stage, place, "window-findings-done" + suffix);
    HeadlessToolkit.run(
        () -> {
          TableView<?> table = (TableView<?>) stage.getScene().lookup("#outcomes");
          table.getSelectionModel().select(0);
          table.fireEvent(
              new KeyEvent(
                  KeyEvent.KEY_PRESSED, "", "", KeyCode.ENTER, false, false, false, false));
        });
    HeadlessToolkit.until(
        "readings",
        () -> {
          Node row = stage.getScene().lookup(".behind-row");
          return row != null;
        });
    HeadlessToolkit.picture(stage.getScene());
    HeadlessToolkit.run(() -> bringToTheTop(stage.getScene().lookup("#behind-back")));
    save(stage, place, "window-findings-behind" + suffix);
  }

  private static void save(Stage stage, Path place, String name) {
    HeadlessToolkit.save(
        HeadlessToolkit.picture(stage.getScene()), place.resolve(name + ".png").toFile());
  }
}
