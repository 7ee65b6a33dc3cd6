package datumpeg.desktop.measure;

import java.util.Map;
import java.util.function.Consumer;

/** What is remembered from session to session, and kept at each change. One thread. */
final class Memory {
  private final Consumer<Map<String, String>> keep;
  private Remembered now = Remembered.nothing();

  /**
   * @param keep is given what is to be kept until the window is opened the next time
   */
  Memory(Consumer<Map<String, String>> keep) {
    this.keep = keep;
  }

  Remembered now() {
    return now;
  }

  /** Takes over what was kept. */
  void restore(Map<String, String> lastState) {
    now = Remembered.of(lastState);
  }

  void become(Remembered newer) {
    now = newer;
    keep.accept(newer.asTexts());
  }
}
