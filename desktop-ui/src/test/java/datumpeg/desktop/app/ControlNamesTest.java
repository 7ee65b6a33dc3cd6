package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.form.RecordJobShelf;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever can have the keys has a name that a screen reader can say, on every screen. */
class ControlNamesTest {
  @TempDir Path folder;

  @Test
  void everyControlThatTakesTheKeysHasAName() {
    Path file = folder.resolve("site.db");
    SampleJob.of("larkrise-01", file).runAll();
    HeadlessToolkit.start();
    Stage stage = HeadlessToolkit.on(Stage::new);
    DesktopWindow window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    Words.of(Locale.ROOT),
                    ZoneOffset.UTC,
                    new SettingsFile.Loaded(Settings.usual(), ""),
                    new NoSessions(),
                    new NoRows(),
                    new NoDesk(),
                    new RecordJobShelf(file, "names", Clock.systemUTC()),
                    settings -> {},
                    job -> {}));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.show(ScreenPictures.read(file));
          window.open("larkrise-01", "lift");
        });
    for (Screen screen : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(screen));
      HeadlessToolkit.picture(stage.getScene());
      List<Node> controls =
          HeadlessToolkit.on(
              () -> HeadlessToolkit.find(stage.getScene().getRoot(), ControlNamesTest::takesKeys));
      assertTrue(controls.size() >= Screen.values().length, screen + " has " + controls.size());
      List<String> nameless =
          HeadlessToolkit.on(
              () ->
                  controls.stream()
                      .filter(control -> !isNamed(control, stage.getScene().getRoot()))
                      .map(Node::toString)
                      .toList());
      assertEquals(List.of(), nameless, screen.toString());
    }
    HeadlessToolkit.run(stage::close);
  }

  private static boolean takesKeys(Node node) {
    return node instanceof Control
        && node.isFocusTraversable()
        && !(node instanceof ScrollPane)
        && !(node.getParent() instanceof Control parent && parent.getAccessibleText() != null);
  }

  private static boolean isNamed(Node node, Node root) {
    String spoken = node.getAccessibleText();
    boolean text = node instanceof Labeled labeled && !labeled.getText().isBlank();
    return (spoken != null && !spoken.isBlank())
        || text
        || HeadlessToolkit.find(
                root, each -> each instanceof Label label && label.getLabelFor() == node)
            .stream()
            .anyMatch(each -> !((Label) each).getText().isBlank());
  }
}
