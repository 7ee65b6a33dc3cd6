package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A meter that acts as a keyboard, on the screen Measure and on others. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
final class MeasureKeysScreenTest extends MeasuringOnScreen {
  MeasureKeysScreenTest(@TempDir Path record) throws IOException {
    super(record);
  }

  @Test
  void aMeterThatActsAsAKeyboardWorksWhateverHasTheFocus() {
    begin();
    Button undo = node(Button.class, "act-undo");
    HeadlessToolkit.run(undo::requestFocus);
    key(undo, "18.004");
    untilText("typed", "Typed: 18.004");
    press(undo, KeyCode.ENTER);
    untilBig("18.004 m");
    assertEquals(1, recorded().size());
    key(undo, "s");
    HeadlessToolkit.until(
        "one is left out",
        () ->
            stage.getScene().lookup("#next") instanceof Labeled next
                && next.getText().startsWith("Then:")
                && next.getText().contains("One is left out."));
  }

  @Test
  void aMeterThatActsAsAKeyboardWorksOnEveryScreenUnlessAPersonWentToATextField() {
    begin();
    showScreen(Screen.SIGN_OFF);
    TextField name = node(TextField.class, "signoff-by");
    HeadlessToolkit.until(
        "it has the focus",
        () -> {
          name.requestFocus(); // as the screen does
          return name.isFocused();
        });
    key(name, "18.004");
    assertTrue(text("measuring-elsewhere").contains("Typed: 18.004."), text("measuring-elsewhere"));
    press(name, KeyCode.ENTER);
    untilElsewhere("Recorded 18.004 m for the distance from slab corner A1 to slab corner A4.");
    assertEquals("", name.getText());

    showScreen(Screen.JOBS);
    Node jobs = node(Node.class, "jobs");
    HeadlessToolkit.run(jobs::requestFocus);
    key(jobs, "20.126");
    press(jobs, KeyCode.ENTER);
    untilElsewhere("Recorded 20.126 m for the distance from slab corner A1 to slab corner B4.");
    assertEquals(Screen.JOBS, HeadlessToolkit.on(() -> window.window().window().screen().get()));

    showScreen(Screen.SIGN_OFF);
    click(name);
    key(name, "12");
    assertEquals("12", name.getText(), "a person clicked it: the keys are for it");
    assertEquals(2, recorded().size());
    Node elsewhere = node(Node.class, "screen-sign-off");
    HeadlessToolkit.run(elsewhere::requestFocus);
    HeadlessToolkit.run(name::requestFocus);
    key(name, "9.001");
    press(name, KeyCode.ENTER);
    untilElsewhere("Recorded 9.001 m for the distance from slab corner A1 to slab corner B1.");

    key(name, "L1");
    assertTrue(name.getText().endsWith("L1"), "typed into by hand: " + name.getText());
    fire("measuring-back");
    untilText("instruction", "Measure from");
    assertEquals(3, recorded().size());
  }

  private void showScreen(Screen screen) {
    HeadlessToolkit.run(() -> window.window().window().screen().set(screen));
  }

  private void untilElsewhere(String what) {
    HeadlessToolkit.until(
        what,
        () ->
            stage.getScene().lookup("#measuring-elsewhere") instanceof Labeled label
                && label.getText().contains(what));
  }

  private static void click(Node node) {
    HeadlessToolkit.run(
        () -> {
          node.fireEvent(
              new MouseEvent(
                  MouseEvent.MOUSE_PRESSED,
                  1,
                  1,
                  1,
                  1,
                  MouseButton.PRIMARY,
                  1,
                  false,
                  false,
                  false,
                  false,
                  true,
                  false,
                  false,
                  false,
                  false,
                  false,
                  null));
          node.requestFocus();
        });
  }
}
