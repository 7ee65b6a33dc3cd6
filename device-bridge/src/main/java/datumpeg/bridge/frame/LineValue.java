package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.LineToken.Kind;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A number of a line with its unit: {@code 12.345 m}, {@code 3/8 in}, {@code 29 ft 6 3/8 in},
 * {@code 29'06"3/8}.
 *
 * @param text as written: the number alone, or feet, inches and fractions with their marks; an inch
 *     mark before the fraction is put behind it
 * @param number in the unit; of feet and inches together, feet
 * @param unit null where the line names none
 * @param end index of the first token after it
 */
record LineValue(String text, double number, @Nullable Unit unit, int end) {

  /**
   * The value that begins at a number token, or null if what stands there is not written as one.
   */
  static @Nullable LineValue at(List<LineToken> tokens, int start) {
    LineValue mixed = number(tokens, start);
    if (mixed == null) {
      return null;
    }
    int unitIndex = skipBlank(tokens, mixed.end());
    LineUnits.Found found = LineUnits.at(tokens, unitIndex);
    boolean fraction = mixed.end() > start + 1;
    if (found == null) {
      return fraction ? null : mixed;
    }
    int end = unitIndex + found.tokenCount();
    if (fraction) {
      return found.unit() == Unit.INCH ? mixed.in(Unit.FOOT_AND_INCH, tokens, start, end) : null;
    }
    if (found.unit() == Unit.FOOT) {
      return feet(tokens, start, mixed, end);
    }
    if (found.unit() == Unit.INCH && hasFractionBehind(tokens, mixed, end)) {
      return withFractionBehind(tokens, start, 0, mixed, end);
    }
    return new LineValue(mixed.text(), mixed.number(), found.unit(), end);
  }

  private LineValue in(Unit named, List<LineToken> tokens, int start, int newEnd) {
    return new LineValue(join(tokens, start, newEnd), number / 12, named, newEnd);
  }

  /** Feet alone, or feet and then inches below 12; null for a half of the second. */
  private static @Nullable LineValue feet(
      List<LineToken> tokens, int start, LineValue feet, int afterFeet) {
    int inchStart = skipBlank(tokens, afterFeet);
    if (inchStart < tokens.size() && tokens.get(inchStart).isMarkOf("-")) {
      inchStart = skipBlank(tokens, inchStart + 1);
    }
    if (inchStart >= tokens.size() || !tokens.get(inchStart).is(Kind.NUMBER)) {
      return new LineValue(feet.text(), feet.number(), Unit.FOOT, afterFeet);
    }
    LineValue inches = number(tokens, inchStart);
    if (inches == null || inches.number() >= 12 || !LineNumber.isWhole(feet.text())) {
      return null;
    }
    int unitIndex = skipBlank(tokens, inches.end());
    LineUnits.Found found = LineUnits.at(tokens, unitIndex);
    if (found == null || found.unit() != Unit.INCH) {
      return null;
    }
    int end = unitIndex + found.tokenCount();
    if (hasFractionBehind(tokens, inches, end)) {
      return withFractionBehind(tokens, start, feet.number(), inches, end);
    }
    double total = feet.number() + inches.number() / 12;
    return new LineValue(join(tokens, start, end), total, Unit.FOOT_AND_INCH, end);
  }

  /** Whether a fraction touches the inch mark; behind a blank it could be a count of its own. */
  private static boolean hasFractionBehind(
      List<LineToken> tokens, LineValue inches, int afterMark) {
    return LineNumber.isWhole(inches.text())
        && tokens.get(afterMark - 1).is(Kind.MARK)
        && isNumber(tokens, afterMark)
        && isSlash(tokens, afterMark + 1);
  }

  /** {@code 29'06"3/8}: a part of an inch; some write the inch mark once more behind it. */
  private static @Nullable LineValue withFractionBehind(
      List<LineToken> tokens, int start, double feet, LineValue inches, int afterMark) {
    LineValue part = fraction(tokens, afterMark, 0, afterMark);
    if (part == null) {
      return null;
    }
    LineUnits.Found again = LineUnits.at(tokens, part.end());
    int end = part.end() + (again != null && again.unit() == Unit.INCH ? again.tokenCount() : 0);
    return new LineValue(
        join(tokens, start, inches.end()) + " " + part.text() + '"',
        feet + (inches.number() + part.number()) / 12,
        Unit.FOOT_AND_INCH,
        end);
  }

  /** A number, a fraction, or a whole number and a fraction. */
  private static @Nullable LineValue number(List<LineToken> tokens, int start) {
    String text = tokens.get(start).text();
    OptionalDouble value = LineNumber.value(text);
    if (value.isEmpty()) {
      return null;
    }
    if (isSlash(tokens, start + 1)) {
      return fraction(tokens, start, 0, start);
    }
    int second = start + 1;
    if (second < tokens.size()
        && (tokens.get(second).is(Kind.BLANK) || tokens.get(second).isMarkOf("-"))
        && isNumber(tokens, second + 1)
        && isSlash(tokens, second + 2)) {
      return LineNumber.isWhole(text)
          ? fraction(tokens, second + 1, value.getAsDouble(), start)
          : null;
    }
    return new LineValue(text, value.getAsDouble(), null, start + 1);
  }

  private static @Nullable LineValue fraction(
      List<LineToken> tokens, int index, double whole, int start) {
    if (!isNumber(tokens, index + 2)) {
      return null;
    }
    String numerator = tokens.get(index).text();
    String denominator = tokens.get(index + 2).text();
    if (!LineNumber.isWhole(numerator)
        || !List.of("2", "4", "8", "16", "32", "64").contains(denominator)) {
      return null;
    }
    double part = Double.parseDouble(numerator) / Double.parseDouble(denominator);
    return part >= 1
        ? null
        : new LineValue(join(tokens, start, index + 3), whole + part, null, index + 3);
  }

  private static boolean isNumber(List<LineToken> tokens, int index) {
    return index < tokens.size() && tokens.get(index).is(Kind.NUMBER);
  }

  private static boolean isSlash(List<LineToken> tokens, int index) {
    return index < tokens.size() && tokens.get(index).isMarkOf("/");
  }

  private static int skipBlank(List<LineToken> tokens, int index) {
    return index < tokens.size() && tokens.get(index).is(Kind.BLANK) ? index + 1 : index;
  }

  private static String join(List<LineToken> tokens, int from, int to) {
    StringBuilder joined = new StringBuilder();
    for (LineToken token : tokens.subList(from, to)) {
      joined.append(token.text());
    }
    return joined.toString();
  }
}
