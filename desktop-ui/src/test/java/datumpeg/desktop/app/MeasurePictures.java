package datumpeg.desktop.app;

import datumpeg.desktop.measure.RecordSessions;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saves pictures of measuring a sample job: under docs/pictures in the usual size, under
 * target/pictures in others. Not part of the build; docs/guide/window.md says how it is run.
 */
@Tag("pictures")
class MeasurePictures {
  private static final Path ROOT = Path.of(System.getProperty("datumpeg.root"));

  @TempDir Path folder;

  @Test
  void saveMeasuringInEverySize() throws IOException {
    HeadlessToolkit.start();
    save(Look.USUAL, ROOT.resolve("docs/pictures"));
    for (Look look : Look.OTHERS) {
      save(look, ROOT.resolve("desktop-ui/target/pictures"));
    }
  }

  private void save(Look look, Path pictures) throws IOException {
    Files.createDirectories(pictures);
    String suffix = look.suffix();
    Path file = folder.resolve("site" + suffix + ".db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.run(sample.steps().get(0));
    Stage stage = HeadlessToolkit.on(Stage::new);
    RecordSessions sessions =
        new RecordSessions(
            file,
            "test",
            Clock.systemUTC(),
            ZoneOffset.UTC,
            Words.of(Locale.ROOT),
            Platform::runLater);
    HeadlessToolkit.run(
        () -> {
          DesktopWindow window =
              new DesktopWindow(
                  Words.of(Locale.ROOT),
                  ZoneOffset.UTC,
                  new SettingsFile.Loaded(
                      look.of(Settings.usual().withLast(Map.of("job", "larkrise-01"))), ""),
                  sessions,
                  new NoRows(),
                  new NoDesk(),
                  new NoShelf(),
                  settings -> {},
                  job -> {});
          window.show(ScreenPictures.read(file));
          window.openOn(stage);
          stage.setWidth(look.width());
          stage.setHeight(look.height());
          window.window().screen().set(Screen.MEASURE);
        });
    HeadlessToolkit.until("the stage", () -> chosen(stage, "measure-stage"));
    picture(stage, pictures, "window-measure-setup" + suffix);
    fire(stage, "measure-begin");
    until(stage, "instruction", "Measure from");
    type(stage, "18.004");
    until(stage, "instruction", "Measure from slab corner A1 to slab corner B4");
    picture(stage, pictures, "window-measure" + suffix);
    type(stage, "9.004");
    until(stage, "question", "Held");
    picture(stage, pictures, "window-measure-held" + suffix);
    fire(stage, "act-again");
    fire(stage, "act-go");
    HeadlessToolkit.until(
        "the targets",
        () ->
            stage.getScene().lookup("#targets") instanceof ListView<?> list
                && !list.getItems().isEmpty());
    picture(stage, pictures, "window-measure-targets" + suffix);
    fire(stage, "act-end");
    HeadlessToolkit.until("the stage", () -> chosen(stage, "measure-stage"));
    HeadlessToolkit.run(() -> choose(stage, "measure-stage", 4));
    HeadlessToolkit.run(() -> choose(stage, "measure-watch-target", 3));
    fire(stage, "measure-watch");
    until(stage, "instruction", "Hold the tilt");
    type(stage, "0.06");
    until(stage, "big-words", "too close");
    picture(stage, pictures, "window-watch" + suffix);
    HeadlessToolkit.run(stage::close);
    sessions.close();
  }

  private static boolean chosen(Stage stage, String id) {
    return stage.getScene().lookup("#" + id) instanceof ComboBox<?> box && box.getValue() != null;
  }

  private static void choose(Stage stage, String id, int index) {
    ((ComboBox<?>) stage.getScene().lookup("#" + id)).getSelectionModel().select(index);
  }

  private static void fire(Stage stage, String id) {
    HeadlessToolkit.run(() -> ((Button) stage.getScene().lookup("#" + id)).fire());
  }

  private static void until(Stage stage, String id, String beginning) {
    HeadlessToolkit.until(
        beginning,
        () ->
            stage.getScene().lookup("#" + id) instanceof Labeled label
                && label.getText().startsWith(beginning));
  }

  private static void type(Stage stage, String value) {
    HeadlessToolkit.run(
        () -> {
          Node root = stage.getScene().getRoot();
          value.chars().mapToObj(Character::toString).forEach(each -> typed(root, each));
          root.fireEvent(
              new KeyEvent(
                  KeyEvent.KEY_PRESSED, "", "", KeyCode.ENTER, false, false, false, false));
        });
  }

  private static void typed(Node root, String letter) {
    root.fireEvent(
        new KeyEvent(
            KeyEvent.KEY_TYPED, letter, letter, KeyCode.UNDEFINED, false, false, false, false));
  }

  private static void picture(Stage stage, Path folder, String name) {
    HeadlessToolkit.save(
        HeadlessToolkit.picture(stage.getScene()), folder.resolve(name + ".png").toFile());
  }
}
