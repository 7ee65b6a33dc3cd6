package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import org.jspecify.annotations.Nullable;

/**
 * The line nearly every meter sends, read without being cut into tokens: a sign or none, digits
 * with one decimal mark or none, blanks or none, and the end or a unit of metres, millimetres or
 * degrees. {@link GeneralTextLine} says the same of each such line and takes four times as long; a
 * test holds the two together.
 */
final class PlainLine {
  /** Any number of so many digits is exact in a double (IEEE 754-2019, binary64: 53 bits). */
  private static final int MOST_DIGITS = 15;

  /** Exact in a double, so that one division by it is rounded once: the nearest double. */
  private static final double[] POWERS_OF_TEN = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  private PlainLine() {}

  /**
   * The value of the line, or null where it is not so plain.
   *
   * @param defaultUnit of a number without a unit
   */
  static @Nullable Measured read(Bytes line, Unit defaultUnit) {
    int length = line.length();
    int first = length > 0 && isSign(line.at(0)) ? 1 : 0;
    long digits = 0;
    int mark = -1;
    int end = first;
    for (; end < length; end++) {
      int value = line.at(end);
      if (value >= '0' && value <= '9') {
        digits = 10 * digits + value - '0';
      } else if (mark < 0 && (value == '.' || value == ',')) {
        mark = end;
      } else {
        break;
      }
    }
    int count = end - first - (mark < 0 ? 0 : 1);
    if (count < 1 || count > MOST_DIGITS || mark == first || mark == end - 1) {
      return null;
    }
    Unit unit = unit(line, end, defaultUnit);
    return unit == null
        ? null
        : measured(line, end, digits / POWERS_OF_TEN[mark < 0 ? 0 : end - 1 - mark], unit);
  }

  private static boolean isSign(int value) {
    return value == '-' || value == '+';
  }

  private static Measured measured(Bytes line, int end, double size, Unit unit) {
    // Adding zero turns −0 into 0, as the general reading does.
    return new Measured(
        line.latinText(0, end), unit, unit.toSi(line.at(0) == '-' ? -size : size) + 0.0);
  }

  /** The unit that fills the rest of the line, the default where nothing does, else null. */
  private static @Nullable Unit unit(Bytes line, int from, Unit defaultUnit) {
    int start = from;
    while (start < line.length() && line.at(start) == ' ') {
      start++;
    }
    int rest = line.length() - start;
    if (rest == 0) {
      return defaultUnit;
    }
    int last = line.at(line.length() - 1);
    if (rest == 1) {
      return last == 'm' ? Unit.METRE : last == 0xB0 ? Unit.DEGREE : null;
    }
    boolean two = rest == 2;
    int before = line.at(line.length() - 2);
    if (two && last == 'm' && before == 'm') {
      return Unit.MILLIMETRE;
    }
    return two && last == 0xB0 && before == 0xC2 ? Unit.DEGREE : null;
  }
}
