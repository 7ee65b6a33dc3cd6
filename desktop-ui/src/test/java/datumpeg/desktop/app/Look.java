package datumpeg.desktop.app;

import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.Theme;
import java.util.List;
import javafx.stage.Stage;

/** A size, letters and colours in which the screens are looked at. */
record Look(String suffix, double width, double height, int percent, Theme theme) {
  static final Look USUAL = new Look("", 1280, 800, 100, Theme.LIGHT);
  static final List<Look> OTHERS =
      List.of(
          new Look("-large", 1920, 1080, 100, Theme.LIGHT),
          new Look("-200", 1280, 800, 200, Theme.LIGHT),
          new Look("-dark", 1280, 800, 100, Theme.DARK),
          new Look("-sun", 1280, 800, 100, Theme.SUN),
          new Look("-sun-200", 1280, 800, 200, Theme.SUN));

  /** Brings a window that is open to it. */
  void of(Stage stage, DesktopWindow window) {
    stage.setWidth(width);
    stage.setHeight(height);
    window.settings().become(of(window.settings().now()));
  }

  Settings of(Settings settings) {
    return settings.withText(percent).with(theme);
  }
}
