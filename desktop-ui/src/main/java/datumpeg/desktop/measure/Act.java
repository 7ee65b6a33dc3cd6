package datumpeg.desktop.measure;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a person can do while measuring, each by one key and one button. */
enum Act {
  /**
   * The held value is right; of a watched target: keep the value that stands; of a question: yes.
   */
  ACCEPT("A", "yes"),
  /** The held value is wrong, measure again; of a question: no. */
  AGAIN("R", "no"),
  /** Tells meters that can be told to measure now. */
  MEASURE("M", ""),
  /** Shows all targets of the stage to choose one from. */
  GO("G", ""),
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

  /** Whether it answers: a held value, or a question of the stage. */
  boolean answers() {
    return this == ACCEPT || this == AGAIN;
  }

  String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Y and N answer whatever is asked. */
  static Optional<Act> ofAnswer(String letter) {
    return switch (letter) {
      case "Y" -> Optional.of(ACCEPT);
      case "N" -> Optional.of(AGAIN);
      default -> Optional.empty();
    };
  }

  static Optional<Act> ofKey(String letter) {
    return Stream.of(values()).filter(act -> act.key.equals(letter)).findFirst();
  }
}
