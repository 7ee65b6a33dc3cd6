package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.setting.SettingsViewModel;
import datumpeg.desktop.setting.Theme;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.text.Text;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is to be read from afar and hit with gloves. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
final class MeasureLayoutTest extends MeasuringOnScreen {
  MeasureLayoutTest(@TempDir Path record) throws IOException {
    super(record);
  }

  @ParameterizedTest
  @CsvSource({"1280, 800, 100, LIGHT", "1280, 800, 200, LIGHT", "1280, 800, 200, SUN"})
  void everythingFitsAndButtonsCanBeHitWithGloves(
      double width, double height, int percent, Theme theme) {
    HeadlessToolkit.run(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
          SettingsViewModel settings = window.window().settings();
          settings.become(settings.now().withText(percent).with(theme));
        });
    assertNoneIsSmall("before it begins");
    begin();
    assertNoneIsSmall("while measuring");
    meterSends("18.0035 m\r\n");
    untilBig("18.0035 m");
    assertFits();
    WritableImage picture = HeadlessToolkit.picture(stage.getScene());
    Node big = node(Node.class, "big");
    assertIsBig(big);
    assertTrue(HeadlessToolkit.darkPixels(picture, place(big)) > 2000, "no big letters");
    assertEquals("18.0035 m", HeadlessToolkit.on(big::getAccessibleText));
    meterSends("19.126 m\r\n");
    untilText("question", "Held: 19.126 m");
    assertFits();
    meterSends("9.004 m\r\n");
    untilText("question", "Held: 9.004 m");
    HeadlessToolkit.until(
        "a choice of targets", () -> stage.getScene().lookup("#choice-2") != null);
    assertFits();
    assertIsBig(big);
  }

  private static void assertIsBig(Node big) {
    Text value =
        (Text)
            HeadlessToolkit.on(() -> HeadlessToolkit.find(big, each -> each instanceof Text))
                .get(0);
    assertTrue(value.getFont().getSize() >= LEAST_BIG, value.getFont().toString());
  }

  /** 12 mm at 96 dots an inch: everything that is pressed, chosen from or typed into. */
  private void assertNoneIsSmall(String when) {
    List<String> small =
        HeadlessToolkit.atRest(
            stage.getScene(),
            () ->
                HeadlessToolkit.find(stage.getScene().getRoot(), MeasureLayoutTest::isPressed)
                    .stream()
                    .filter(node -> node.getLayoutBounds().getHeight() < 12 / 25.4 * 96)
                    .map(node -> node + " " + node.getLayoutBounds())
                    .toList());
    assertEquals(List.of(), small, when);
  }

  private static boolean isPressed(Node node) {
    boolean control =
        node instanceof ButtonBase || node instanceof ComboBoxBase<?> || node instanceof TextField;
    return control && isShown(node) && !(node.getParent() instanceof ComboBoxBase<?>);
  }

  private static boolean isShown(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }
}
