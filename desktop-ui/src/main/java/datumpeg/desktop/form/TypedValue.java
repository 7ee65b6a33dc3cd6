package datumpeg.desktop.form;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.desktop.form.FormField.Shape;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a person types, and what the job file is given for it: a number without a unit is in the
 * user's unit, millimetres or inches, degrees Celsius or Fahrenheit; {@code 29-6 3/8} is feet and
 * inches; a slope {@code 4:12} is the ratio {@code 1:3}.
 */
final class TypedValue {
  private static final Pattern NUMBER = Pattern.compile("[-+]?\\d{1,12}(?:[.,]\\d{0,12})?");
  private static final Pattern INCHES = Pattern.compile("(?:\\d{1,6}\\s+)?\\d{1,3}/\\d{1,3}");
  private static final Pattern FEET_INCHES =
      Pattern.compile("(\\d{1,6})(?:-|\\s+)(\\d{1,2}(?:\\.\\d{1,6})?(?:\\s+\\d{1,3}/\\d{1,3})?)");
  private static final Pattern TEMPERATURE =
      Pattern.compile("[-+]?\\d{1,3}(?:\\.\\d{1,3})?\\s*(?:(?:deg|\u00b0)[CF]|K)");
  private static final Pattern SLOPE =
      Pattern.compile("(\\d{1,6}(?:\\.\\d{1,6})?)\\s*(?::|in)\\s*(\\d{1,6}(?:\\.\\d{1,6})?)");

  /** Where a length stands in the line of a limit; a comma between two digits is a decimal mark. */
  private static final Pattern IN_A_LIMIT =
      Pattern.compile(
          "(\\b(?:lower|upper|cap|up to|at)\\s+|\\bbeyond\\s*:?\\s*|:\\s*|\\+\\s*)"
              + "((?:[^:;,+]|(?<=\\d),(?=\\d))+?)"
              + "(?=\\s*(?:[:;+]|(?<!\\d),|,(?!\\d)|\\bper m\\b|$))");

  private static final Pattern BETWEEN_ITEMS = Pattern.compile("\\s*;\\s*");
  private static final Pattern COMMAS = Pattern.compile("\\s*,\\s*");

  private TypedValue() {}

  /** The text for the job file. */
  static String written(Shape shape, String typed, LengthDisplay units) {
    return switch (shape) {
      case LENGTH -> length(typed.strip(), units);
      case LIMIT -> limit(typed.strip(), units);
      case LENGTHS, PLACES ->
          items(typed).map(item -> length(item, units)).collect(Collectors.joining("; "));
      case ANGLE -> angle(typed.strip());
      case TEMPERATURE -> degrees(typed.strip(), units == LengthDisplay.METRIC ? "degC" : "degF");
      case TEMPERATURES ->
          items(typed)
              .map(item -> degrees(item, units == LengthDisplay.METRIC ? "degC" : "degF"))
              .collect(Collectors.joining("; "));
      case WARMER -> degrees(typed.strip(), units == LengthDisplay.METRIC ? "K" : "degF");
      case TEXT, TEXTS, SENTENCE, DAY, WHOLE, NUMBER, TRUTH, SOME -> typed;
    };
  }

  /** The job file knows a point alone in temperatures. */
  private static String degrees(String typed, String unit) {
    String pointed = typed.replace(',', '.').replace('\u2212', '-');
    return NUMBER.matcher(pointed).matches() ? pointed + " " + unit : typed;
  }

  /** A temperature as people write it; empty while it is none. */
  static String temperature(String written) {
    return TEMPERATURE.matcher(written).matches()
        ? written.replace("deg", "\u00b0").replaceAll("\\s+", " ")
        : "";
  }

  /** Temperatures as people write them, with a word between two. */
  static String temperatures(String written, String between) {
    return items(written).map(TypedValue::temperature).collect(Collectors.joining(between));
  }

  private static Stream<String> items(String typed) {
    Pattern between = typed.indexOf(';') >= 0 ? BETWEEN_ITEMS : COMMAS;
    return Stream.of(between.split(typed.strip())).filter(item -> !item.isEmpty());
  }

  /** A length, or a limit in one line, of which some parts are lengths and the last its source. */
  private static String limit(String typed, LengthDisplay units) {
    int source = typed.indexOf(", source ");
    String rule = source < 0 ? typed : typed.substring(0, source);
    Matcher inside = IN_A_LIMIT.matcher(rule);
    if (rule.startsWith("formula ") || !inside.find()) {
      return length(typed, units);
    }
    return inside.replaceAll(
            found -> Matcher.quoteReplacement(found.group(1) + length(found.group(2), units)))
        + typed.substring(rule.length());
  }

  private static String length(String typed, LengthDisplay units) {
    boolean metric = units == LengthDisplay.METRIC;
    if (NUMBER.matcher(typed).matches()) {
      return typed + (metric ? " mm" : " in");
    }
    if (metric) {
      return typed;
    }
    if (INCHES.matcher(typed).matches() && typed.indexOf(' ') < 0) {
      return typed + " in";
    }
    Matcher feet = FEET_INCHES.matcher(typed);
    return feet.matches() ? feet.group(1) + " ft " + feet.group(2) + " in" : typed;
  }

  private static String angle(String typed) {
    if (NUMBER.matcher(typed).matches()) {
      return typed + " deg";
    }
    Matcher slope = SLOPE.matcher(typed);
    if (!slope.matches()) {
      return typed;
    }
    BigDecimal rise = new BigDecimal(slope.group(1));
    if (rise.signum() == 0) {
      return "0 deg";
    }
    BigDecimal run = new BigDecimal(slope.group(2)).divide(rise, MathContext.DECIMAL64);
    BigDecimal short6 = run.setScale(6, java.math.RoundingMode.HALF_EVEN).stripTrailingZeros();
    return "1:" + short6.toPlainString();
  }

  /** A length in metres; empty while it is none. */
  static OptionalDouble metres(String written) {
    try {
      return OptionalDouble.of(Quantity.lengthMetres(written));
    } catch (QuantityFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** An angle in radians; empty while it is none. */
  static OptionalDouble radians(String written) {
    try {
      return OptionalDouble.of(Quantity.angleRadians(written));
    } catch (QuantityFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** The items of a list that are lengths, in metres. */
  static double[] allMetres(String written) {
    return items(written).map(TypedValue::metres).flatMapToDouble(OptionalDouble::stream).toArray();
  }
}
