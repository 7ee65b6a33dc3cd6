package datumpeg.analysis.building;

import java.util.Optional;

/**
 * A crossing of the grid: a letter across the span and a frame number along the length, such as A3.
 */
public record GridMark(char letter, int number) implements Comparable<GridMark> {
  private static final int MOST_DIGITS = 3;

  /** The mark written so, or empty if the text is not a letter and a number. */
  public static Optional<GridMark> parse(String text) {
    if (text.length() < 2 || text.length() > 1 + MOST_DIGITS) {
      return Optional.empty();
    }
    int number = 0;
    for (int i = 1; i < text.length(); i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9 || (number == 0 && digit == 0)) {
        return Optional.empty();
      }
      number = 10 * number + digit;
    }
    char letter = text.charAt(0);
    return letter >= 'A' && letter <= 'Z'
        ? Optional.of(new GridMark(letter, number))
        : Optional.empty();
  }

  public String text() {
    return letter + Integer.toString(number);
  }

  @Override
  public int compareTo(GridMark other) {
    return letter != other.letter
        ? Character.compare(letter, other.letter)
        : Integer.compare(number, other.number);
  }
}
