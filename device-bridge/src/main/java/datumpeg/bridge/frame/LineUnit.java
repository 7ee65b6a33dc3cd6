package datumpeg.bridge.frame;

/**
 * The units a text line may carry.
 *
 * <p>1 in = 0.0254 m and 1 ft = 0.3048 m exactly: B. N. Taylor and A. Thompson, Guide for the Use
 * of the International System of Units (NIST SP 811), 2008, appendix B.8. Slopes (mm/m, %) are
 * taken as the tangent of the angle.
 */
public enum LineUnit {
  METRE("m", QuantityKind.LENGTH, 1.0),
  MILLIMETRE("mm", QuantityKind.LENGTH, 0.001),
  CENTIMETRE("cm", QuantityKind.LENGTH, 0.01),
  FOOT("ft", QuantityKind.LENGTH, 0.3048),
  INCH("in", QuantityKind.LENGTH, 0.0254),
  /** Feet, inches and a fraction of an inch together; the scale is that of the inch. */
  FOOT_INCH("ft-in", QuantityKind.LENGTH, 0.0254),
  DEGREE("deg", QuantityKind.ANGLE, StrictMath.PI / 180),
  RADIAN("rad", QuantityKind.ANGLE, 1.0),
  MILLIMETRE_PER_METRE("mm/m", QuantityKind.ANGLE, 0.001),
  PERCENT("%", QuantityKind.ANGLE, 0.01);

  private final String symbol;
  private final QuantityKind kind;
  private final double scale;

  LineUnit(String symbol, QuantityKind kind, double scale) {
    this.symbol = symbol;
    this.kind = kind;
    this.scale = scale;
  }

  /** As the readings table writes it. */
  public String symbol() {
    return symbol;
  }

  public QuantityKind kind() {
    return kind;
  }

  /** The value in metres or radians of a number in this unit ({@link #FOOT_INCH}: in inches). */
  public double toSi(double number) {
    return switch (this) {
      // Divided, not multiplied by the reciprocal: 8999 mm is then the double nearest to 8.999 m.
      case MILLIMETRE -> number / 1000;
      case CENTIMETRE -> number / 100;
      case MILLIMETRE_PER_METRE -> StrictMath.atan(number / 1000);
      case PERCENT -> StrictMath.atan(number / 100);
      default -> number * scale;
    };
  }

  /** The inverse of {@link #toSi}. */
  public double fromSi(double siValue) {
    return switch (this) {
      case MILLIMETRE -> siValue * 1000;
      case CENTIMETRE -> siValue * 100;
      case MILLIMETRE_PER_METRE -> StrictMath.tan(siValue) * 1000;
      case PERCENT -> StrictMath.tan(siValue) * 100;
      default -> siValue / scale;
    };
  }
}
