package datumpeg.desktop.setting;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.text.Words;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * How the window is set now.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class SettingsViewModel {
  private static final int TEXT_STEP = 10;

  private final Words words;
  private final String trouble;
  private final ReadOnlyObjectWrapper<Settings> settings;

  /**
   * Settings as they were found.
   *
   * @param trouble what was wrong with their file; empty when nothing was
   */
  public SettingsViewModel(Words words, Settings settings, String trouble) {
    this.words = words;
    this.trouble = trouble;
    this.settings = new ReadOnlyObjectWrapper<>(settings);
    words.units(settings.units());
  }

  public ReadOnlyObjectProperty<Settings> settings() {
    return settings.getReadOnlyProperty();
  }

  public Settings now() {
    return settings.get();
  }

  public void largerText() {
    text(now().textPercent() + TEXT_STEP);
  }

  public void smallerText() {
    text(now().textPercent() - TEXT_STEP);
  }

  /** Takes settings over from elsewhere, such as where the window was left. */
  public void become(Settings newer) {
    words.units(newer.units());
    settings.set(newer);
  }

  void theme(Theme theme) {
    become(now().with(theme));
  }

  void text(int percent) {
    become(now().withText(percent));
  }

  void units(LengthDisplay units) {
    become(now().with(units));
  }

  /** A sentence on a settings file that could not be used; empty when it could. */
  public String trouble() {
    return trouble.isEmpty() ? "" : words.text("settings.broken", trouble);
  }

  Words words() {
    return words;
  }
}
