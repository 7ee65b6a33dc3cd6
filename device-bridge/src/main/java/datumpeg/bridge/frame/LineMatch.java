package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import java.math.BigDecimal;

/** One line held against one pattern, from left to right. One use. */
final class LineMatch {
  /** A double holds 15 to 17 significant digits; no meter sends more than this. */
  private static final int MOST_DIGITS = 18;

  private static final String SIGNS = "+-\u2212";

  private final LinePattern pattern;
  private final String line;
  private int at;
  private String number = "";
  private String direction = "";
  private Unit unit;

  LineMatch(LinePattern pattern, String line) {
    this.pattern = pattern;
    this.line = line;
    this.unit = pattern.unit();
  }

  Decoded decode() {
    for (LineShape.Part part : pattern.shape().parts()) {
      int start = at;
      if (!matches(part)) {
        return not(Reason.MALFORMED, "from character " + (start + 1) + " it is not as described");
      }
    }
    if (at < line.length()) {
      return not(Reason.MALFORMED, "it goes on behind what is described");
    }
    return measured();
  }

  private Decoded measured() {
    boolean below = pattern.minus().contains(direction);
    if (!direction.isEmpty() && !below && !isPlus()) {
      return not(Reason.AMBIGUOUS, "'" + direction + "' is no direction the profile knows");
    }
    BigDecimal value = new BigDecimal(number).scaleByPowerOfTen(pattern.exponent());
    BigDecimal signed = below ? value.negate() : value;
    String text = (signed.scale() < 0 ? signed.setScale(0) : signed).toPlainString();
    return new Measured(text, unit, unit.toSi(signed.doubleValue()) + 0.0);
  }

  private boolean isPlus() {
    return pattern.plus().isEmpty() || pattern.plus().contains(direction);
  }

  private boolean matches(LineShape.Part part) {
    if (part instanceof LineShape.Literal literal) {
      return skip(line.startsWith(literal.text(), at) ? literal.text().length() : 0);
    }
    if (part instanceof LineShape.Blank) {
      return skip(blanks());
    }
    return switch ((LineShape.Slot) part) {
      case VALUE -> value();
      case NUMBER -> !takeNumber().isEmpty();
      case UNIT -> takeUnit();
      case WORD -> skip(letters());
      case DIRECTION -> takeDirection();
      case REST -> skip(line.length() - at) || at == line.length();
    };
  }

  private boolean skip(int count) {
    at += count;
    return count > 0;
  }

  private int blanks() {
    int end = at;
    while (end < line.length() && LineShape.isBlank(line.charAt(end))) {
      end++;
    }
    return end - at;
  }

  private int letters() {
    int end = at;
    while (end < line.length()
        && (Character.isLetter(line.charAt(end)) || (end > at && isDigit(line.charAt(end))))) {
      end++;
    }
    return end - at;
  }

  private boolean value() {
    number = takeNumber();
    return !number.isEmpty();
  }

  /** A number with its sign, with a point whatever the line writes; empty if there is none. */
  private String takeNumber() {
    int index = at;
    boolean below = false;
    if (index < line.length() && SIGNS.indexOf(line.charAt(index)) >= 0) {
      below = line.charAt(index) != '+';
      index = at + 1;
      while (index < line.length() && LineShape.isBlank(line.charAt(index))) {
        index++;
      }
    }
    int end = digits(index);
    int whole = end - index;
    int parts = 0;
    if (end < line.length() && line.charAt(end) == pattern.decimalMark().character()) {
      parts = digits(end + 1) - end - 1;
      end += parts > 0 ? parts + 1 : 0;
    }
    if (whole + parts == 0 || whole + parts > MOST_DIGITS) {
      return "";
    }
    at = end;
    return (below ? "-" : "") + line.substring(index, end).replace(',', '.');
  }

  private int digits(int from) {
    int end = from;
    while (end < line.length() && isDigit(line.charAt(end))) {
      end++;
    }
    return end;
  }

  private static boolean isDigit(char value) {
    return value >= '0' && value <= '9';
  }

  private boolean takeUnit() {
    // A unit takes at most three tokens; a few characters hold them.
    String near = line.substring(at, Math.min(line.length(), at + 12));
    var tokens = LineToken.scan(near);
    LineUnits.Found found = LineUnits.at(tokens, 0);
    if (found == null) {
      return false;
    }
    unit = found.unit();
    return skip(
        tokens.subList(0, found.tokenCount()).stream().mapToInt(t -> t.text().length()).sum());
  }

  private boolean takeDirection() {
    int length = letters();
    int count = length > 0 ? length : at < line.length() && blanks() == 0 ? 1 : 0;
    direction = line.substring(at, at + count);
    return skip(count);
  }

  private static NotAReading not(Reason reason, String detail) {
    return new NotAReading(reason, detail);
  }
}
