package datumpeg.desktop.app;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.input.KeyCode;

/** The screens, in the order of their buttons. */
enum Screen {
  JOBS(KeyCode.DIGIT1),
  FINDINGS(KeyCode.DIGIT2),
  TREND(KeyCode.DIGIT3),
  MEASURE(KeyCode.DIGIT4),
  COMPARE(KeyCode.DIGIT5),
  FORM(KeyCode.DIGIT6),
  SIGN_OFF(KeyCode.DIGIT7),
  SETTINGS(KeyCode.DIGIT0);

  private final KeyCode digit;

  Screen(KeyCode digit) {
    this.digit = digit;
  }

  static Optional<Screen> ofId(String id) {
    return Stream.of(values()).filter(screen -> screen.id().equals(id)).findFirst();
  }

  /** With Ctrl (on a Mac, Command) this key leads to the screen. */
  KeyCode digit() {
    return digit;
  }

  /** The key of its name in the resource bundle. */
  String key() {
    return "screen." + id();
  }

  String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
