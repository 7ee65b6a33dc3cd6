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
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On every screen: what can have the keys has a name, and what is pressed is high enough. */
class ControlsTest {
  @TempDir Path folder;

  private Stage stage;
  private DesktopWindow window;

  @BeforeEach
  void open() {
    Path file = folder.resolve("site.db");
    SampleJob.of("larkrise-01", file).runAll();
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
    window =
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
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(stage::close);
  }

  @Test
  void noTextIsCutInLettersOfTwiceTheSize() {
    HeadlessToolkit.run(
        () -> {
          stage.setWidth(1280);
          stage.setHeight(800);
          window.settings().become(window.settings().now().withText(200));
        });
    for (Screen screen : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(screen));
      HeadlessToolkit.picture(stage.getScene());
      assertEquals(
          List.of(), HeadlessToolkit.cutTexts(stage.getScene().getRoot()), screen.toString());
    }
  }

  /** On a tablet the drawing beside the causes is not cut, for a few lines that are too many. */
  @Test
  void aDrawingBesideTheCausesIsSeenWhole() {
    HeadlessToolkit.run(
        () -> {
          stage.setWidth(1280);
          stage.setHeight(800);
          window.open("larkrise-01", "arrival");
        });
    HeadlessToolkit.untilDrawn(stage.getScene());
    HeadlessToolkit.picture(stage.getScene());
    ScrollPane around = (ScrollPane) stage.getScene().lookup(".drawing-scroll");
    double hidden =
        HeadlessToolkit.on(
            () ->
                around.getContent().getBoundsInLocal().getHeight()
                    - around.getViewportBounds().getHeight());
    assertTrue(hidden < 1, hidden + " pixels are hidden");
  }

  /** In letters of twice the size no button is lower than its text. */
  @Test
  void nothingThatIsPressedIsSqueezed() {
    HeadlessToolkit.run(() -> window.settings().become(window.settings().now().withText(200)));
    for (Screen screen : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(screen));
      List<String> squeezed =
          HeadlessToolkit.atRest(
              stage.getScene(),
              () ->
                  HeadlessToolkit.find(stage.getScene().getRoot(), ControlsTest::isSqueezed)
                      .stream()
                      .map(Node::toString)
                      .toList());
      assertEquals(List.of(), squeezed, screen.toString());
    }
  }

  private static boolean isSqueezed(Node node) {
    return node instanceof ButtonBase button
        && button.isManaged()
        && button.getHeight() > 0
        && button.getHeight() < button.prefHeight(button.getWidth()) - 1;
  }

  @Test
  void everyControlThatTakesTheKeysHasAName() {
    for (Screen screen : Screen.values()) {
      HeadlessToolkit.run(() -> window.window().screen().set(screen));
      HeadlessToolkit.picture(stage.getScene());
      List<Node> controls =
          HeadlessToolkit.on(
              () -> HeadlessToolkit.find(stage.getScene().getRoot(), ControlsTest::takesKeys));
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
