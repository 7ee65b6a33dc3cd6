package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.frame.LineToken.Kind;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads a line that carries one value: words, then a number, then its unit, then nothing.
 *
 * <p>The rule for lines with several numbers: a whole number belongs to the words before the value
 * when letters stand directly before it ({@code D1}), when it follows {@code #}, or when the value
 * carries its own unit and the number is followed by {@code :} or {@code )} and a blank. Every
 * other second number makes the line ambiguous, and an ambiguous line is not a reading: a value
 * lost is measured again, a wrong one is built upon. Total, linear in the length of the line.
 * Immutable.
 */
public final class GeneralTextLine {
  /** Words of lines in which a meter speaks about itself (common practice, no source). */
  private static final Set<String> STATUS_WORDS =
      Set.of(
          "batt",
          "battery",
          "bat",
          "volt",
          "volts",
          "temp",
          "temperature",
          "status",
          "state",
          "error",
          "err",
          "fault",
          "alarm",
          "warning",
          "ready",
          "ok",
          "busy",
          "version",
          "ver",
          "firmware",
          "fw",
          "serial",
          "sn",
          "id",
          "model",
          "memory",
          "mem",
          "time",
          "date",
          "laser",
          "signal",
          "quality",
          "count",
          "calibration",
          "cal");

  private static final String PROMPTS = ">?*$!@~<";
  private static final String LABEL_MARKS = ":=#()[]._,;";
  private static final String SIGNS = "+-\u2212";

  private final Unit defaultUnit;

  /**
   * A decoding.
   *
   * @param defaultUnit of a number without a unit
   * @throws IllegalArgumentException for feet and inches, which no single number carries
   */
  public GeneralTextLine(Unit defaultUnit) {
    if (defaultUnit == Unit.FOOT_AND_INCH) {
      throw new IllegalArgumentException("a number without a unit cannot be feet and inches");
    }
    this.defaultUnit = defaultUnit;
  }

  /** What the line is, given without its terminator; total. */
  public Decoded decode(Bytes line) {
    Measured plain = PlainLine.read(line, defaultUnit);
    return plain != null ? plain : decodeTokens(line);
  }

  /** The same without the short way of plain lines. */
  Decoded decodeTokens(Bytes line) {
    String text = withoutEdges(LineText.of(line));
    if (hasUnreadable(text)) {
      return not(Reason.UNREADABLE, "a byte in the line is no text");
    }
    if (!text.isEmpty() && PROMPTS.indexOf(text.charAt(0)) >= 0) {
      return not(Reason.ECHO, "it begins with '" + text.charAt(0) + "'");
    }
    List<LineToken> tokens = LineToken.scan(text);
    for (LineToken token : tokens) {
      if (STATUS_WORDS.contains(token.text().toLowerCase(Locale.ROOT))) {
        return not(Reason.STATUS, "it speaks of '" + token.text() + "'");
      }
    }
    int start = valueStart(tokens);
    return start < 0 ? not(Reason.NO_NUMBER, "it has no value") : value(tokens, start);
  }

  /** Blanks and control characters at the ends mean nothing: a meter may wrap its line in them. */
  static String withoutEdges(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && isEdge(text.charAt(start))) {
      start++;
    }
    while (end > start && isEdge(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(start, end);
  }

  private static boolean isEdge(char value) {
    return value <= ' ' || value == 0x7F || value == '\u00A0';
  }

  private static boolean hasUnreadable(String text) {
    for (int index = 0; index < text.length(); index++) {
      char value = text.charAt(index);
      if (value == LineText.UNREADABLE || (Character.isISOControl(value) && value != '\t')) {
        return true;
      }
    }
    return false;
  }

  /** Index of the number that is the value, or −1. */
  private static int valueStart(List<LineToken> tokens) {
    for (int index = 0; index < tokens.size(); index++) {
      if (tokens.get(index).is(Kind.NUMBER) && !isOrdinal(tokens, index)) {
        return index;
      }
    }
    return -1;
  }

  /** Whether a number counts the line rather than carries its value: {@code #3}, {@code 3: }. */
  private static boolean isOrdinal(List<LineToken> tokens, int index) {
    if (!LineNumber.isWhole(tokens.get(index).text())) {
      return false;
    }
    if (index > 0 && tokens.get(index - 1).isMarkOf("#")) {
      return true;
    }
    return index + 2 < tokens.size()
        && tokens.get(index + 1).isMarkOf(":)")
        && tokens.get(index + 2).is(Kind.BLANK);
  }

  private Decoded value(List<LineToken> tokens, int start) {
    Sign sign = Sign.before(tokens, start);
    if (sign == null) {
      return not(Reason.AMBIGUOUS, "a dash before the number may be a minus or not");
    }
    NotAReading badLabel = checkLabel(tokens, sign.start());
    if (badLabel != null) {
      return badLabel;
    }
    LineValue value = LineValue.at(tokens, start);
    if (value == null) {
      return not(Reason.MALFORMED, "'" + rest(tokens, start) + "' is not a number with a unit");
    }
    if (value.end() < tokens.size()) {
      return trailing(tokens, value);
    }
    if (value.unit() == null && !mayLackUnit(tokens, start)) {
      return not(Reason.AMBIGUOUS, "a number or a unit stands before a number without a unit");
    }
    return measured(sign, value);
  }

  private static @Nullable NotAReading checkLabel(List<LineToken> tokens, int end) {
    for (int index = 0; index < end; index++) {
      LineToken token = tokens.get(index);
      boolean hyphen = token.isMarkOf("-") && tokens.get(index + 1).is(Kind.WORD);
      if (token.is(Kind.MARK) && !token.isMarkOf(LABEL_MARKS) && !hyphen) {
        return not(Reason.MALFORMED, "'" + token.text() + "' before the number");
      }
    }
    return null;
  }

  private static NotAReading trailing(List<LineToken> tokens, LineValue value) {
    for (LineToken token : tokens.subList(value.end(), tokens.size())) {
      if (token.is(Kind.NUMBER)) {
        return not(Reason.AMBIGUOUS, "it has more than one number");
      }
    }
    String rest = rest(tokens, value.end());
    return not(
        Reason.UNKNOWN_UNIT,
        value.unit() == null
            ? "'" + rest + "' is not a unit this decoding knows"
            : "'" + rest + "' stands after the value");
  }

  /** A number without a unit is taken only where neither another number nor a unit precedes it. */
  private static boolean mayLackUnit(List<LineToken> tokens, int start) {
    for (LineToken token : tokens.subList(0, start)) {
      if (token.is(Kind.NUMBER)
          || (token.is(Kind.WORD) && LineUnits.ofWord(token.text()) != null)) {
        return false;
      }
    }
    return true;
  }

  private Measured measured(Sign sign, LineValue value) {
    Unit unit = value.unit() == null ? defaultUnit : value.unit();
    double siValue = unit.toSi(sign.negative() ? -value.number() : value.number());
    // Adding zero turns −0 into 0: the two are one value and must be one text.
    return new Measured(sign.text() + value.text(), unit, siValue + 0.0);
  }

  private static String rest(List<LineToken> tokens, int from) {
    StringBuilder rest = new StringBuilder();
    for (LineToken token : tokens.subList(from, tokens.size())) {
      rest.append(token.text());
    }
    return rest.toString().trim();
  }

  private static NotAReading not(Reason reason, String detail) {
    return new NotAReading(reason, detail);
  }

  /**
   * The sign of the value.
   *
   * @param text as it is kept: empty, + or -
   * @param start index of the first token of the value with its sign
   */
  private record Sign(String text, int start) {

    boolean negative() {
      return text.equals("-");
    }

    /** The sign before a number; null where it cannot be told from a hyphen. */
    static @Nullable Sign before(List<LineToken> tokens, int number) {
      boolean apart = number > 0 && tokens.get(number - 1).is(Kind.BLANK);
      int index = apart ? number - 2 : number - 1;
      if (index < 0 || !tokens.get(index).isMarkOf(SIGNS)) {
        return new Sign("", number);
      }
      int before = index - 1;
      boolean blankBefore = before >= 0 && tokens.get(before).is(Kind.BLANK);
      int labelEnd = blankBefore ? before - 1 : before;
      boolean opened = labelEnd < 0 || tokens.get(labelEnd).isMarkOf(":=");
      boolean clear = apart ? opened : opened || blankBefore;
      return clear ? new Sign(tokens.get(index).isMarkOf("+") ? "+" : "-", index) : null;
    }
  }
}
