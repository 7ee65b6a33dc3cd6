package datumpeg.desktop.app;

import datumpeg.desktop.setting.Theme;
import java.net.URL;
import java.util.List;
import java.util.Objects;

/** The style sheets of a theme, and the size from which every other size follows. */
final class Dress {
  /** Plain text at 100 %, in pixels of 1/96 inch. */
  private static final double PLAIN_PIXELS = 15;

  private Dress() {}

  static List<String> sheets(Theme theme) {
    return List.of(sheet("theme-" + theme.id()), sheet("window"));
  }

  static String letters(int percent) {
    return "-fx-font-size: " + PLAIN_PIXELS * percent / 100 + "px;";
  }

  private static String sheet(String name) {
    String path = "/datumpeg/desktop/control/" + name + ".css";
    URL found =
        Objects.requireNonNull(
            Dress.class.getResource(path), () -> "The resource " + path + " is missing.");
    return found.toExternalForm();
  }
}
