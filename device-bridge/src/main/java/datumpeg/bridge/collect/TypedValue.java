package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A value as a person types it, or a meter that acts as a keyboard; of a question, yes or no.
 *
 * <p>A bare number means what it must by the value expected: {@code 20.118}, {@code 20,118} and
 * {@code 20118} are one length where the plan says 20.125 m. Where several units are possible, one
 * without a decimal mark is millimetres and one with it metres.
 *
 * @param text as typed
 * @param unit the one that a bare number was taken in; empty when the text carries its own
 * @param valueSi metres or radians; 1 for yes, 0 for no
 */
record TypedValue(String text, String unit, Dimension dimension, double valueSi) {
  private static final Map<String, String> ANSWERS =
      Map.of("yes", "yes", "y", "yes", "no", "no", "n", "no");
  private static final Pattern BARE = Pattern.compile("[+-]?(?:\\d+([.,]\\d*)?|([.,])\\d+)");
  private static final Pattern SPLIT = Pattern.compile("([+-]?[0-9.,]+) \\[(mm|m|cm|deg)\\]");

  /** From this on a whole number that nothing is expected of is millimetres. */
  private static final int SURELY_MILLIMETRES = 100;

  /**
   * Reads what was typed for a target.
   *
   * @throws QuantityFormatException if it is no value
   */
  static TypedValue of(String line, Wanted wanted, HoldRule rule) {
    if (wanted.isQuestion()) {
      return answer(line);
    }
    Matcher bare = BARE.matcher(line);
    if (!bare.matches()) {
      return of(line, "", Quantity.parse(line, "", wanted.target().quantity().dimension()));
    }
    if (wanted.target().quantity() == MeasuredQuantity.TILT) {
      return withUnit(line, "deg");
    }
    boolean whole = bare.group(1) == null && bare.group(2) == null;
    List<String> units = whole ? List.of("mm", "m", "cm") : List.of("m", "mm", "cm");
    for (String unit : units) {
      TypedValue value = withUnit(line, unit);
      if (wanted.expectedSi().isPresent() && rule.fits(wanted, value.valueSi())) {
        return value;
      }
    }
    return withUnit(line, whole && isLarge(line) ? "mm" : "m");
  }

  private static boolean isLarge(String whole) {
    return Math.abs(Double.parseDouble(whole)) >= SURELY_MILLIMETRES;
  }

  private static TypedValue withUnit(String text, String unit) {
    return of(text, unit, Quantity.parse(text, unit));
  }

  private static TypedValue of(String text, String unit, Quantity quantity) {
    return new TypedValue(text, unit, quantity.dimension(), quantity.siValue());
  }

  private static TypedValue answer(String line) {
    String word = ANSWERS.get(line.toLowerCase(Locale.ROOT));
    if (word == null) {
      throw new QuantityFormatException(
          "The answer to a question is '" + line + "'; expected yes or no.");
    }
    return new TypedValue(word, "", Dimension.LENGTH, word.equals("yes") ? 1 : 0);
  }

  /** Back from {@link #actText}. */
  static TypedValue ofAct(String text) {
    if (ANSWERS.containsKey(text)) {
      return answer(text);
    }
    Matcher split = SPLIT.matcher(text);
    return split.matches()
        ? withUnit(split.group(1), split.group(2))
        : of(text, "", Quantity.parse(text));
  }

  /**
   * As a capture keeps it: what was typed, and in brackets the unit it was taken in where it named
   * none, so that a replay need not know what was expected.
   */
  String actText() {
    return unit.isEmpty() ? text : text + " [" + unit + "]";
  }

  Delivered delivered(OffsetDateTime at, String source) {
    return new Delivered(text, unit, dimension, valueSi, at, "", "keyboard:", "", source);
  }
}
