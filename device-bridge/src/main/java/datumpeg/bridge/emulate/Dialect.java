package datumpeg.bridge.emulate;

import datumpeg.analysis.quantity.Unit;
import java.util.Locale;

/**
 * How an emulated meter writes a value. All of them are invented and read by the general text line.
 */
public enum Dialect {
  /** {@code 12.3456 m}, resolution 0.1 mm. */
  METRES(Unit.METRE, 4, "", " m", "\r\n"),
  /** {@code D: 12345.6 mm}, resolution 0.1 mm. */
  MILLIMETRES(Unit.MILLIMETRE, 1, "D: ", " mm", "\r"),
  /** {@code 12,3456 m}, resolution 0.1 mm. */
  DECIMAL_COMMA(Unit.METRE, 4, "", " m", "\n"),
  /** {@code 29' 6 3/8"}, resolution 1/32 in. */
  FEET_INCH(Unit.FOOT_AND_INCH, 5, "", "", "\r\n"),
  /**
   * {@code Tilt = -0.352°} with the sign always written, resolution 0.001°; degree sign in UTF-8.
   */
  DEGREES(Unit.DEGREE, 3, "Tilt = ", "\u00B0", "\r\n"),
  /** {@code +3.52 mm/m}, resolution 0.01 mm/m. */
  MILLIMETRES_PER_METRE(Unit.MILLIMETRE_PER_METRE, 2, "", " mm/m", "\r\n");

  private final Unit unit;
  private final int digits;
  private final String before;
  private final String after;
  private final String terminator;

  Dialect(Unit unit, int digits, String before, String after, String terminator) {
    this.unit = unit;
    this.digits = digits;
    this.before = before;
    this.after = after;
    this.terminator = terminator;
  }

  public Unit unit() {
    return unit;
  }

  /** The smallest step between two values written, in metres or (near zero) radians. */
  public double resolutionSi() {
    return unit.toSi(this == FEET_INCH ? 1.0 / (12 << digits) : StrictMath.pow(10, -digits));
  }

  String terminator() {
    return terminator;
  }

  /** The line for a value in metres or radians, without terminator. */
  String line(double siValue) {
    double number = unit.fromSi(siValue);
    return before + (this == FEET_INCH ? feetInches(number * 12) : decimals(number)) + after;
  }

  private String decimals(double number) {
    String form = (this == DEGREES || this == MILLIMETRES_PER_METRE ? "%+." : "%.") + digits + "f";
    String text = String.format(Locale.ROOT, form, number);
    return this == DECIMAL_COMMA ? text.replace('.', ',') : text;
  }

  private String feetInches(double inches) {
    long parts = Math.round(Math.abs(inches) * (1 << digits));
    long perFoot = 12L << digits;
    long denominator = 1L << digits;
    long numerator = parts % denominator;
    while (numerator != 0 && numerator % 2 == 0) {
      numerator /= 2;
      denominator /= 2;
    }
    String sign = inches < 0 && parts > 0 ? "-" : "";
    String fraction = numerator == 0 ? "" : " " + numerator + "/" + denominator;
    return sign + parts / perFoot + "' " + parts % perFoot / (1L << digits) + fraction + "\"";
  }
}
