package datumpeg.desktop.app;

import java.util.concurrent.locks.LockSupport;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.stage.Window;

/**
 * The program as a process of its own, which a test can kill, with a person before its window who
 * presses one button and says what stands on the screen:
 *
 * <ul>
 *   <li>{@code before}, the job chosen, the stage chosen, the text of the button that is pressed
 *   <li>{@code asks}, the instruction, what the plan says
 *   <li>{@code said}, what happened last
 * </ul>
 */
final class WindowUnderKill {
  private static final long NANOS_BETWEEN_LOOKS = 5_000_000;

  private boolean pressed;
  private boolean skips = Boolean.getBoolean("datumpeg.skip-first");
  private String asks = "";
  private String said = "";

  private WindowUnderKill() {}

  public static void main(String[] arguments) {
    WindowUnderKill person = new WindowUnderKill();
    Thread looking = new Thread(person::look, "person");
    looking.setDaemon(true);
    looking.start();
    Main.main(arguments);
  }

  private void look() {
    while (true) {
      try {
        Platform.runLater(
            () ->
                Window.getWindows().stream()
                    .findFirst()
                    .map(Window::getScene)
                    .ifPresent(this::see));
      } catch (IllegalStateException e) {
        // The toolkit has not started yet.
      }
      LockSupport.parkNanos(NANOS_BETWEEN_LOOKS);
    }
  }

  private void see(Scene scene) {
    if (!pressed) {
      press(scene);
      return;
    }
    String plan = text(scene, "expected");
    String nowAsks = text(scene, "instruction") + "\t" + plan;
    String nowSaid = text(scene, "said");
    if (!nowAsks.equals(asks) && !plan.isEmpty()) {
      asks = nowAsks;
      say("asks\t" + asks);
    }
    if (!nowSaid.equals(said)) {
      said = nowSaid;
      say("said\t" + said);
    }
    if (skips && !asks.isEmpty() && scene.lookup("#act-skip") instanceof Button skip) {
      skips = false;
      skip.fire();
    }
  }

  private void press(Scene scene) {
    if (!(scene.lookup("#measure-job") instanceof ComboBox<?> job)
        || job.getValue() == null
        || !(scene.lookup("#measure-begin") instanceof Button begin)
        || begin.isDisabled()) {
      return;
    }
    Button button = scene.lookup("#measure-go-on") instanceof Button goOn ? goOn : begin;
    Object stage = ((ComboBox<?>) scene.lookup("#measure-stage")).getValue();
    say("before\t" + job.getValue() + "\t" + stage + "\t" + button.getText());
    pressed = true;
    button.fire();
  }

  private static String text(Scene scene, String id) {
    return scene.lookup("#" + id) instanceof Labeled label ? label.getText() : "";
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
