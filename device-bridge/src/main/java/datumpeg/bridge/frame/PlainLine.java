package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import java.nio.ByteBuffer;
import org.jspecify.annotations.Nullable;

/**
 * The line nearly every meter sends, read where it lies in one pass and without being cut into
 * tokens: a sign or none, digits with one decimal mark or none, blanks or none, and the end or a
 * unit of metres, millimetres or degrees. {@link GeneralTextLine} says the same of each such line
 * and takes ten times as long; a test holds the two together. Remembers the line it read last. One
 * thread.
 */
final class PlainLine {
  /** Any number of so many digits is exact in a double (IEEE 754-2019, binary64: 53 bits). */
  private static final int MOST_DIGITS = 15;

  /** Exact in a double, so that one division by it is rounded once: the nearest double. */
  private static final double[] POWERS_OF_TEN = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  /** The degree sign in ISO 8859-1, and the last of its two bytes in UTF-8. */
  private static final int DEGREE = 0xB0;

  private static final int DEGREE_OF_UTF_8 = 0xC2;

  private final Unit defaultUnit;
  private PlainShape shape;
  private @Nullable PlainLayout layout;
  private double siValue;

  /**
   * Reads nothing yet.
   *
   * @param defaultUnit of a number without a unit
   */
  PlainLine(Unit defaultUnit) {
    this.defaultUnit = defaultUnit;
    this.shape = new PlainShape(0, -1, 0, 0, 0, defaultUnit);
  }

  /** The value of a whole line, or null where it is not so plain. */
  static @Nullable Measured read(Bytes line, Unit defaultUnit) {
    PlainLine plain = new PlainLine(defaultUnit);
    return plain.readByBytes(line.buffer(), 0) && plain.shape.lineEnd() == line.length()
        ? plain.measured(line, 0)
        : null;
  }

  /**
   * Reads the line that begins at an index if it looks like the one remembered.
   *
   * @param bytes of eight the first one lowest
   * @return whether it does; if not, {@link #readAnew} says more
   */
  boolean readAlike(ByteBuffer bytes, int start) {
    PlainLayout alike = layout;
    if (alike == null || start > bytes.limit() - PlainLayout.BYTES) {
      return false;
    }
    long word = bytes.getLong(start);
    if (!alike.fits(word, bytes.getLong(start + Long.BYTES))) {
      return false;
    }
    take(alike.number(word), (byte) word == '-'); // its shape is the last one's
    return true;
  }

  /**
   * Reads the line that begins at an index and ends before the first CR or LF, or where the bytes
   * end, and remembers what it looks like.
   *
   * @param bytes of eight the first one lowest
   * @return whether it is so plain
   */
  boolean readAnew(ByteBuffer bytes, int start) {
    layout = null;
    boolean plain = readByBytes(bytes, start);
    if (plain && PlainLayout.covers(shape) && start <= bytes.limit() - PlainLayout.BYTES) {
      layout = new PlainLayout(shape, bytes.getLong(start), bytes.getLong(start + Long.BYTES));
    }
    return plain;
  }

  private boolean readByBytes(ByteBuffer bytes, int start) {
    int sign = at(bytes, start);
    int first = sign == '-' || sign == '+' ? start + 1 : start;
    long digits = 0;
    int mark = -1;
    int index = first;
    for (; index < bytes.limit(); index++) {
      byte value = bytes.get(index);
      if (value >= '0' && value <= '9') {
        digits = 10 * digits + value - '0';
      } else if (mark < 0 && (value == '.' || value == ',')) {
        mark = index;
      } else {
        break;
      }
    }
    if (mark == first || mark == index - 1) {
      return false;
    }
    PlainShape found = shape(bytes, start, first, mark, index);
    if (found == null || found.digitCount() < 1 || found.digitCount() > MOST_DIGITS) {
      return false;
    }
    shape = found;
    take(digits, sign == '-');
    return true;
  }

  /** The shape of the line whose number ends at an index; null where more than a unit follows. */
  private @Nullable PlainShape shape(
      ByteBuffer bytes, int start, int first, int mark, int textEnd) {
    int index = textEnd;
    while (at(bytes, index) == ' ') {
      index++;
    }
    Unit unit = defaultUnit;
    if (at(bytes, index) == 'm') {
      unit = at(bytes, index + 1) == 'm' ? Unit.MILLIMETRE : Unit.METRE;
      index += unit == Unit.METRE ? 1 : 2;
    } else if (!isEnd(at(bytes, index))) {
      index += at(bytes, index) == DEGREE_OF_UTF_8 ? 1 : 0;
      if (at(bytes, index) != DEGREE) {
        return null;
      }
      unit = Unit.DEGREE;
      index++;
    }
    return isEnd(at(bytes, index))
        ? new PlainShape(
            first - start,
            mark < 0 ? mark : mark - start,
            textEnd - start,
            index - start,
            next(bytes, index) - start,
            unit)
        : null;
  }

  /** The byte at an index; behind the last one as if a line ended there. */
  private static int at(ByteBuffer bytes, int index) {
    return index < bytes.limit() ? bytes.get(index) & 0xFF : '\n';
  }

  private static boolean isEnd(int value) {
    return value == '\r' || value == '\n';
  }

  /** Behind the CR, the LF or both of them at an index. */
  private static int next(ByteBuffer bytes, int lineEnd) {
    boolean both =
        at(bytes, lineEnd) == '\r' && lineEnd + 1 < bytes.limit() && at(bytes, lineEnd + 1) == '\n';
    return Math.min(bytes.limit(), lineEnd + (both ? 2 : 1));
  }

  private void take(long digits, boolean negative) {
    double size = digits / POWERS_OF_TEN[shape.decimals()];
    // Adding zero turns −0 into 0, as the general reading does.
    siValue = shape.unit().toSi(negative ? -size : size) + 0.0;
  }

  /** The shape of the line read last. */
  PlainShape shape() {
    return shape;
  }

  /**
   * The value of the line read last.
   *
   * @param bytes those it was read from
   * @param start where the line begins in them
   */
  Measured measured(Bytes bytes, int start) {
    return new Measured(bytes, start, shape.textEnd(), shape.unit(), siValue);
  }
}
