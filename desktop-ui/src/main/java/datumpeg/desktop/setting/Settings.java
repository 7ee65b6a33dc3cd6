package datumpeg.desktop.setting;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.Map;
import java.util.TreeMap;

/**
 * How one user wants the window, and where it was left. Immutable.
 *
 * @param textPercent the size of letters, from {@value #LEAST_TEXT} to {@value #MOST_TEXT}
 * @param units in which lengths are shown
 * @param width of the window in pixels; 0 for the usual
 * @param height of the window in pixels; 0 for the usual
 * @param lastState what was shown last, by names that the window and its screens give
 */
public record Settings(
    Theme theme,
    int textPercent,
    LengthDisplay units,
    double width,
    double height,
    Map<String, String> lastState) {
  public static final int LEAST_TEXT = 80;
  public static final int MOST_TEXT = 200;

  public Settings {
    if (textPercent < LEAST_TEXT || textPercent > MOST_TEXT) {
      throw new IllegalArgumentException(
          "text is " + textPercent + " %; expected " + LEAST_TEXT + " to " + MOST_TEXT);
    }
    if (!(width >= 0 && width <= 100_000 && height >= 0 && height <= 100_000)) {
      throw new IllegalArgumentException(
          "the window is " + width + " by " + height + "; expected pixels");
    }
    lastState = Map.copyOf(lastState);
  }

  /** Of who has chosen nothing yet. */
  public static Settings usual() {
    return new Settings(Theme.LIGHT, 100, LengthDisplay.METRIC, 0, 0, Map.of());
  }

  public Settings with(Theme newTheme) {
    return new Settings(newTheme, textPercent, units, width, height, lastState);
  }

  /** The same with letters of the nearest size that there is. */
  public Settings withText(int percent) {
    int possible = Math.max(LEAST_TEXT, Math.min(MOST_TEXT, percent));
    return new Settings(theme, possible, units, width, height, lastState);
  }

  public Settings with(LengthDisplay newUnits) {
    return new Settings(theme, textPercent, newUnits, width, height, lastState);
  }

  public Settings withSize(double newWidth, double newHeight) {
    return new Settings(theme, textPercent, units, newWidth, newHeight, lastState);
  }

  /** What was shown last under that name, or an empty text. */
  public String last(String name) {
    return lastState.getOrDefault(name, "");
  }

  public Settings withLast(Map<String, String> shown) {
    Map<String, String> all = new TreeMap<>(lastState);
    all.putAll(shown);
    return new Settings(theme, textPercent, units, width, height, all);
  }
}
