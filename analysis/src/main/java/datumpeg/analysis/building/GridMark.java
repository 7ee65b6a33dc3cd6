package datumpeg.analysis.building;

import java.util.Comparator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A crossing of the grid: a letter across the span and a frame number along the length, such as A3.
 */
public record GridMark(char letter, int number) implements Comparable<GridMark> {
  private static final Pattern TEXT = Pattern.compile("([A-Z])([1-9]\\d{0,2})");
  private static final Comparator<GridMark> ORDER =
      Comparator.comparing(GridMark::letter).thenComparing(GridMark::number);

  /** The mark written so, or empty if the text is not a letter and a number. */
  public static Optional<GridMark> parse(String text) {
    Matcher match = TEXT.matcher(text);
    return match.matches()
        ? Optional.of(new GridMark(match.group(1).charAt(0), Integer.parseInt(match.group(2))))
        : Optional.empty();
  }

  public String text() {
    return letter + Integer.toString(number);
  }

  @Override
  public int compareTo(GridMark other) {
    return ORDER.compare(this, other);
  }
}
