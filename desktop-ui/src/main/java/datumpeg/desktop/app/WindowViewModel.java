package datumpeg.desktop.app;

import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.time.ZoneId;
import java.util.function.IntConsumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;

/**
 * Which screen is shown, and whether what it shows is the record's present.
 *
 * <p>One thread, the toolkit's when there is one.
 */
final class WindowViewModel {
  private final Words words;
  private final ZoneId zone;
  private final IntConsumer textStep;
  private final ReadOnlyStringWrapper settingsTrouble = new ReadOnlyStringWrapper("");
  private final ObjectProperty<Screen> screen = new SimpleObjectProperty<>(Screen.JOBS);
  private final ReadOnlyStringWrapper file = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper live = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  /**
   * The window on no record yet.
   *
   * @param settingsTrouble a sentence on settings that could not be used, or an empty text
   * @param textStep makes the letters larger for a number above 0, smaller for one below
   */
  WindowViewModel(Words words, ZoneId zone, String settingsTrouble, IntConsumer textStep) {
    this.words = words;
    this.zone = zone;
    this.textStep = textStep;
    this.settingsTrouble.set(settingsTrouble);
  }

  void textStep(int step) {
    textStep.accept(step);
  }

  ReadOnlyStringProperty settingsTrouble() {
    return settingsTrouble.getReadOnlyProperty();
  }

  void show(RecordState state) {
    file.set(state.file());
    String readAt = state.readAt().map(at -> Figures.second(at, zone)).orElse("");
    if (state.reached()) {
      live.set(words.text("window.live", readAt));
      trouble.set(state.trouble());
      return;
    }
    boolean looking = state.trouble().isEmpty();
    live.set(words.text(looking ? "window.looking" : "window.not-reached"));
    // Without jobs the list of jobs says the same sentence in its place.
    boolean said = looking || state.jobs().isEmpty();
    trouble.set(said ? "" : words.text("window.trouble-shown", state.trouble(), readAt));
  }

  ObjectProperty<Screen> screen() {
    return screen;
  }

  ReadOnlyStringProperty file() {
    return file.getReadOnlyProperty();
  }

  /** Whether the record is being followed. */
  ReadOnlyStringProperty live() {
    return live.getReadOnlyProperty();
  }

  /**
   * Why what is shown may be out of date, or nothing can be added to it; empty if neither is so.
   */
  ReadOnlyStringProperty trouble() {
    return trouble.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }
}
