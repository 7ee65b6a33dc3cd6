package datumpeg.analysis.quantity;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A length in metres or an angle in radians, read from text.
 *
 * <p>Texts: {@code 18 m}, {@code 150 mm}, {@code 29 ft 6 3/8 in}, {@code 29' 6 3/8"}, {@code 10
 * deg}, {@code 1:500}. A decimal comma is exactly one comma and no dot.
 */
public record Quantity(Dimension dimension, double siValue) {
  private static final String NUMBER = "[+-]?(?:\\d{1,12}(?:[.,]\\d{0,12})?|[.,]\\d{1,12})";
  private static final Pattern WITH_UNIT =
      Pattern.compile("(" + NUMBER + ")\\s*(mm/m|[a-zA-Z]{1,4}|%|°|'|\"|′|″)");
  private static final Pattern BARE = Pattern.compile(NUMBER);
  private static final Pattern RATIO = Pattern.compile("1\\s*:\\s*(\\d{1,9}(?:\\.\\d{1,6})?)");
  private static final Pattern FEET_INCHES =
      Pattern.compile(
          "([+-]?)(?:(\\d{1,6})\\s*(?:ft|'|′)\\s*-?\\s*)?(?:(\\d{1,6}(?:\\.\\d{1,6})?)"
              + "(?:\\s+(\\d{1,3})/(\\d{1,3}))?|(\\d{1,3})/(\\d{1,3}))\\s*(?:in|\"|″)");
  private static final Pattern FEET_INCHES_BARE =
      Pattern.compile(
          "([+-]?)(\\d{1,6})(?:-|\\s+)(\\d{1,2}(?:\\.\\d{1,6})?)(?:\\s+(\\d{1,3})/(\\d{1,3}))?");
  private static final double METRES_PER_INCH = 0.0254;

  public Quantity {
    if (!Double.isFinite(siValue)) {
      throw new QuantityFormatException("The value is not a finite number: " + siValue + ".");
    }
  }

  /**
   * Reads a text that carries its unit.
   *
   * @throws QuantityFormatException if the number or the unit cannot be understood
   */
  public static Quantity parse(String text) {
    return withUnit(text, List.of(Dimension.values()));
  }

  /**
   * Reads a value whose unit stands apart; with an empty unit the value must carry its own.
   *
   * @throws QuantityFormatException if value and unit do not fit together
   */
  public static Quantity parse(String value, String unitSymbol) {
    return parse(value, unitSymbol, List.of(Dimension.values()));
  }

  /**
   * The same; the message of a failure offers the units of one dimension alone. What is read may be
   * of another.
   *
   * @throws QuantityFormatException if value and unit do not fit together
   */
  public static Quantity parse(String value, String unitSymbol, Dimension offered) {
    return parse(value, unitSymbol, List.of(offered));
  }

  private static Quantity parse(String value, String unitSymbol, List<Dimension> offered) {
    if (unitSymbol.isBlank()) {
      return withUnit(value, offered);
    }
    Unit unit =
        Unit.ofSymbol(unitSymbol.strip())
            .orElseThrow(
                () ->
                    new QuantityFormatException(
                        "'"
                            + unitSymbol
                            + "' is not a unit; expected one of "
                            + units(offered)
                            + "."));
    String trimmed = value.strip();
    if (unit == Unit.FOOT_AND_INCH) {
      return parseFeetInches(trimmed);
    }
    if (!BARE.matcher(trimmed).matches()) {
      throw new QuantityFormatException(
          "'"
              + value
              + "' is not a plain number, which the unit column '"
              + unit.symbol()
              + "' needs; leave the unit empty if the value carries its own.");
    }
    return of(number(trimmed), unit);
  }

  private static Quantity withUnit(String text, List<Dimension> offered) {
    String trimmed = text.strip();
    Matcher ratio = RATIO.matcher(trimmed);
    if (ratio.matches()) {
      return ofRatio(Double.parseDouble(ratio.group(1)), trimmed);
    }
    Matcher feetInches = FEET_INCHES.matcher(trimmed);
    if (feetInches.matches()) {
      return new Quantity(Dimension.LENGTH, feetInchesMetres(feetInches, trimmed));
    }
    Matcher withUnit = WITH_UNIT.matcher(trimmed);
    if (withUnit.matches()) {
      Optional<Unit> unit = Unit.ofSymbol(withUnit.group(2));
      if (unit.isPresent()) {
        return of(number(withUnit.group(1)), unit.get());
      }
    }
    throw new QuantityFormatException(
        "'"
            + text
            + "' is not a value with a unit; expected a number and one of "
            + units(offered)
            + ", such as "
            + (offered.contains(Dimension.LENGTH)
                ? "\"150 mm\" or \"29 ft 6 3/8 in\"."
                : "\"10 deg\" or \"2 mm/m\"."));
  }

  private static Quantity ofRatio(double run, String text) {
    if (run == 0) {
      throw new QuantityFormatException("The ratio '" + text + "' divides by zero.");
    }
    return new Quantity(Dimension.ANGLE, StrictMath.atan(1 / run));
  }

  private static String units(List<Dimension> offered) {
    return offered.stream()
        .map(dimension -> String.join(", ", Unit.symbols(dimension)))
        .collect(Collectors.joining(" or "));
  }

  public static Quantity of(double value, Unit unit) {
    return new Quantity(unit.dimension(), unit.toSi(value));
  }

  /**
   * Reads a length.
   *
   * @return metres
   */
  public static double lengthMetres(String text) {
    return parse(text, "", Dimension.LENGTH).require(Dimension.LENGTH, text);
  }

  /**
   * Reads an angle; a ratio such as {@code 1:500} is the angle with that tangent.
   *
   * @return radians
   */
  public static double angleRadians(String text) {
    return parse(text, "", Dimension.ANGLE).require(Dimension.ANGLE, text);
  }

  private double require(Dimension wanted, String text) {
    if (dimension != wanted) {
      throw new QuantityFormatException(
          "'"
              + text
              + "' is "
              + (dimension == Dimension.LENGTH ? "a length" : "an angle")
              + "; expected "
              + (wanted == Dimension.LENGTH ? "a length" : "an angle")
              + " in one of "
              + String.join(", ", Unit.symbols(wanted))
              + ".");
    }
    return siValue;
  }

  private static Quantity parseFeetInches(String text) {
    Matcher bare = FEET_INCHES_BARE.matcher(text);
    if (bare.matches()) {
      double inches = inches(bare.group(3), bare.group(4), bare.group(5), text);
      double metres = (Integer.parseInt(bare.group(2)) * 12 + inches) * METRES_PER_INCH;
      return new Quantity(Dimension.LENGTH, "-".equals(bare.group(1)) ? -metres : metres);
    }
    Matcher marked = FEET_INCHES.matcher(text);
    if (marked.matches()) {
      return new Quantity(Dimension.LENGTH, feetInchesMetres(marked, text));
    }
    throw new QuantityFormatException(
        "'" + text + "' is not feet and inches; expected such as 29-6 3/8 or 29' 6 3/8\".");
  }

  private static double feetInchesMetres(Matcher match, String text) {
    String feet = match.group(2);
    double inches =
        match.group(3) != null
            ? inches(match.group(3), match.group(4), match.group(5), text)
            : inches("0", match.group(6), match.group(7), text);
    double metres = ((feet == null ? 0 : Integer.parseInt(feet)) * 12 + inches) * METRES_PER_INCH;
    return "-".equals(match.group(1)) ? -metres : metres;
  }

  private static double inches(
      String whole,
      @org.jspecify.annotations.Nullable String numerator,
      @org.jspecify.annotations.Nullable String denominator,
      String text) {
    double inches = Double.parseDouble(whole);
    if (numerator == null || denominator == null) {
      return inches;
    }
    int divisor = Integer.parseInt(denominator);
    if (divisor == 0 || Integer.parseInt(numerator) >= divisor) {
      throw new QuantityFormatException(
          "The fraction "
              + numerator
              + "/"
              + denominator
              + " in '"
              + text
              + "' is not a part of an inch; expected such as 3/8.");
    }
    return inches + Integer.parseInt(numerator) / (double) divisor;
  }

  /** A decimal with point or comma; the pattern lets at most one of them through. */
  private static double number(String text) {
    return Double.parseDouble(text.replace(',', '.'));
  }
}
