package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.mistake.Nearest;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Options that take one of a few words: western-electric for WESTERN_ELECTRIC. */
final class Choice {
  private Choice() {}

  /**
   * @throws InputException if there is no such word; the message names the nearest
   */
  static <E extends Enum<E>> E of(E[] choices, String option, String word) {
    List<String> words = Stream.of(choices).map(Choice::word).toList();
    int found = words.indexOf(word.toLowerCase(Locale.ROOT));
    if (found < 0) {
      throw new InputException(
          option
              + " is '"
              + word
              + "'; expected one of "
              + String.join(", ", words)
              + Nearest.of(word, words)
                  .map(near -> "; the nearest is '" + near + "'.")
                  .orElse("."));
    }
    return choices[found];
  }

  /** How a choice is written. */
  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
