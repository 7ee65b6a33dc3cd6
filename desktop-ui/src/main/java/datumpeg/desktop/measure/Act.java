package datumpeg.desktop.measure;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a person can do while measuring, each by one key and one button. */
enum Act {
  /** The held value is right; of a watched target: keep the value that stands. */
  ACCEPT("A", "yes"),
  AGAIN("R", "again"),
  SKIP("S", "skip"),
  BACK("B", "back"),
  UNDO("U", "undo"),
  /** Shows or hides the raw bytes. */
  BYTES("H", ""),
  /** Turns the tones on or off. */
  TONES("T", ""),
  /** Says which key the foot switch sends. */
  FOOT("F", ""),
  END("Q", "quit");

  private final String key;
  private final String line;

  Act(String key, String line) {
    this.key = key;
    this.line = line;
  }

  /** The key's letter. */
  String key() {
    return key;
  }

  /** What is typed for it in a terminal; empty where the session knows nothing of it. */
  String line() {
    return line;
  }

  String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<Act> ofKey(String letter) {
    return Stream.of(values()).filter(act -> act.key.equals(letter)).findFirst();
  }
}
