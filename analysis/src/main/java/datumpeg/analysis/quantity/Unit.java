package datumpeg.analysis.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A unit a reading or a job file may carry.
 *
 * <p>Length factors are exact: the metre's decimal parts (SI Brochure, 9th edition, 2019, table 7);
 * inch = 25.4 mm and foot = 304.8 mm exactly (international yard and pound agreement, 1959). Degree
 * = π/180 rad (SI Brochure, table 8). A slope in mm/m or % is the tangent of the angle.
 */
public enum Unit {
  METRE("m", Dimension.LENGTH, 1),
  MILLIMETRE("mm", Dimension.LENGTH, 0.001),
  CENTIMETRE("cm", Dimension.LENGTH, 0.01),
  FOOT("ft", Dimension.LENGTH, 0.3048),
  INCH("in", Dimension.LENGTH, 0.0254),
  /** Feet, inches and a fraction in one value, such as {@code 29-6 3/8}. */
  FOOT_AND_INCH("ft-in", Dimension.LENGTH, 0.3048),
  DEGREE("deg", Dimension.ANGLE, StrictMath.PI / 180),
  RADIAN("rad", Dimension.ANGLE, 1),
  MILLIMETRE_PER_METRE("mm/m", Dimension.ANGLE, 0.001),
  PERCENT("%", Dimension.ANGLE, 0.01);

  private final String symbol;
  private final Dimension dimension;
  private final double factor;

  Unit(String symbol, Dimension dimension, double factor) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.factor = factor;
  }

  /** How the unit is written in job files and tables. */
  public String symbol() {
    return symbol;
  }

  public Dimension dimension() {
    return dimension;
  }

  /** A value in this unit, as metres or radians. */
  public double toSi(double value) {
    return isSlope() ? StrictMath.atan(value * factor) : value * factor;
  }

  /** Metres or radians, as a value in this unit. */
  public double fromSi(double siValue) {
    return isSlope() ? StrictMath.tan(siValue) / factor : siValue / factor;
  }

  private boolean isSlope() {
    return this == MILLIMETRE_PER_METRE || this == PERCENT;
  }

  /** The unit written so; the degree sign, the prime and the double prime are understood too. */
  public static Optional<Unit> ofSymbol(String text) {
    return switch (text) {
      case "°" -> Optional.of(DEGREE);
      case "'", "′" -> Optional.of(FOOT);
      case "\"", "″" -> Optional.of(INCH);
      default -> Arrays.stream(values()).filter(unit -> unit.symbol.equals(text)).findFirst();
    };
  }

  /** The symbols of all units of a dimension, for messages. */
  public static List<String> symbols(Dimension dimension) {
    return Arrays.stream(values())
        .filter(unit -> unit.dimension == dimension)
        .map(Unit::symbol)
        .toList();
  }
}
