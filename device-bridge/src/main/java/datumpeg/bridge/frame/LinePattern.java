package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import java.util.List;

/**
 * Lines of one shape, and how the number in them becomes a value. Immutable.
 *
 * @param shape what such a line looks like
 * @param unit of the number, unless the line names its own
 * @param decimalMark point or comma
 * @param exponent the number times ten to this is the value in the unit
 * @param minus what {@code {direction}} says of a value below 0
 * @param plus what {@code {direction}} says of a value of 0 or above
 */
public record LinePattern(
    LineShape shape,
    Unit unit,
    DecimalMark decimalMark,
    int exponent,
    List<String> minus,
    List<String> plus) {

  /** What stands between the whole and the parts of a number. */
  public enum DecimalMark {
    POINT('.'),
    COMMA(',');

    private final char character;

    DecimalMark(char character) {
      this.character = character;
    }

    /** How profiles write it. */
    public String text() {
      return String.valueOf(character);
    }

    char character() {
      return character;
    }
  }

  public LinePattern {
    minus = List.copyOf(minus);
    plus = List.copyOf(plus);
    if (unit == Unit.FOOT_AND_INCH) {
      throw new IllegalArgumentException("one number cannot be feet and inches");
    }
    if (exponent < -12 || exponent > 12) {
      throw new IllegalArgumentException("the exponent is " + exponent + "; expected -12 to 12");
    }
    boolean direction = shape.parts().contains(LineShape.Slot.DIRECTION);
    if (direction == minus.isEmpty()) {
      throw new IllegalArgumentException(
          "{direction} and the words of 'minus' belong together: the line has "
              + (direction ? "the first without the others" : "the others without the first"));
    }
    if (minus.stream().anyMatch(plus::contains)) {
      throw new IllegalArgumentException("a word of 'minus' is one of 'plus' too");
    }
  }

  /** A pattern without a direction. */
  public static LinePattern of(LineShape shape, Unit unit, DecimalMark decimalMark, int exponent) {
    return new LinePattern(shape, unit, decimalMark, exponent, List.of(), List.of());
  }

  /** What a line is; total, linear in its length. */
  public Decoded decode(Bytes frame) {
    return new LineMatch(this, GeneralTextLine.withoutEdges(LineText.of(frame))).decode();
  }
}
