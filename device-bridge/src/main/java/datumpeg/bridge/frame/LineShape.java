package datumpeg.bridge.frame;

import java.util.ArrayList;
import java.util.List;

/**
 * What a line looks like, in place of a regular expression: text that stands there as it is, and
 * blanks to be filled, each by one piece of the line. Matching walks the line once and never goes
 * back, so that no shape can make it slow. Immutable.
 *
 * <p>{@code {value}} is the number that counts, {@code {number}} any other, {@code {unit}} a unit,
 * {@code {word}} a word, {@code {direction}} a word or one mark that says which way, {@code {rest}}
 * at the end all that is left. A blank stands for one blank or more.
 *
 * @param text as a profile writes it
 * @param parts in order
 */
public record LineShape(String text, List<Part> parts) {
  private static final int LONGEST = 256;

  /** A piece of a shape. */
  public sealed interface Part {}

  /** Text that stands in the line as it is. */
  public record Literal(String text) implements Part {}

  /** One blank or more. */
  public record Blank() implements Part {}

  /** Something to be filled. */
  public enum Slot implements Part {
    VALUE,
    NUMBER,
    UNIT,
    WORD,
    DIRECTION,
    REST;

    String written() {
      return "{" + name().toLowerCase(java.util.Locale.ROOT) + "}";
    }
  }

  public LineShape {
    parts = List.copyOf(parts);
  }

  /**
   * Reads a shape.
   *
   * @throws IllegalArgumentException if it is none; the message says why
   */
  public static LineShape parse(String text) {
    if (text.length() > LONGEST) {
      throw new IllegalArgumentException(
          "a line's shape has at most " + LONGEST + " characters, found " + text.length());
    }
    List<Part> parts = new ArrayList<>();
    int index = 0;
    while (index < text.length()) {
      index = next(text, index, parts);
    }
    require(parts);
    return new LineShape(text, parts);
  }

  private static int next(String text, int index, List<Part> parts) {
    char first = text.charAt(index);
    if (first == '{') {
      Slot slot = slot(text, index);
      parts.add(slot);
      return index + slot.written().length();
    }
    boolean blank = isBlank(first);
    int end = index + 1;
    while (end < text.length() && text.charAt(end) != '{' && isBlank(text.charAt(end)) == blank) {
      end++;
    }
    parts.add(blank ? new Blank() : new Literal(text.substring(index, end)));
    return end;
  }

  private static Slot slot(String text, int index) {
    for (Slot slot : Slot.values()) {
      if (text.startsWith(slot.written(), index)) {
        return slot;
      }
    }
    throw new IllegalArgumentException(
        "'"
            + text.substring(index, Math.min(text.length(), index + 12))
            + "' is no blank to be filled; there are {value}, {number}, {unit}, {word},"
            + " {direction} and, at the end, {rest}");
  }

  private static void require(List<Part> parts) {
    for (Slot once : List.of(Slot.VALUE, Slot.UNIT, Slot.DIRECTION)) {
      long count = parts.stream().filter(part -> part == once).count();
      if (count > 1 || (count == 0 && once == Slot.VALUE)) {
        throw new IllegalArgumentException(
            "it has " + once.written() + " " + count + " times; expected once");
      }
    }
    int rest = parts.indexOf(Slot.REST);
    if (rest >= 0 && rest < parts.size() - 1) {
      throw new IllegalArgumentException("{rest} stands before something; expected at the end");
    }
  }

  static boolean isBlank(char value) {
    return value == ' ' || value == '\t' || value == '\u00A0';
  }
}
