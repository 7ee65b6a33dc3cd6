package datumpeg.desktop.measure;

import java.util.Locale;
import java.util.Optional;

/**
 * What comes from the keyboard while measuring, from a person or from a meter that acts as one. A
 * value begins with a digit, a sign or a decimal mark and goes to the Enter key; whatever comes
 * between belongs to it. Where no value has begun, a letter is a command. One thread.
 */
final class KeyedInput {
  private static final int LONGEST = 60;

  private final StringBuilder text = new StringBuilder();

  /** What has been typed of a value. */
  String text() {
    return text.toString();
  }

  boolean isEmpty() {
    return text.isEmpty();
  }

  /**
   * Takes a character.
   *
   * @return the letter, in upper case, where it is a command
   */
  Optional<String> typed(String character) {
    if (character.length() != 1 || Character.isISOControl(character.charAt(0))) {
      return Optional.empty();
    }
    if (text.isEmpty() && Character.isLetter(character.charAt(0))) {
      return Optional.of(character.toUpperCase(Locale.ROOT));
    }
    boolean begins = !text.isEmpty() || "0123456789+-.,−".contains(character);
    if (begins && text.length() < LONGEST) {
      text.append(character.equals("−") ? "-" : character);
    }
    return Optional.empty();
  }

  /** Ends the value; empty if none was typed. */
  Optional<String> enter() {
    String line = text.toString().strip();
    text.setLength(0);
    return line.isEmpty() ? Optional.empty() : Optional.of(line);
  }

  /** Takes back the last character. */
  void rubOut() {
    if (!text.isEmpty()) {
      text.setLength(text.length() - 1);
    }
  }

  void clear() {
    text.setLength(0);
  }
}
