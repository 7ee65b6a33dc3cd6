package datumpeg.analysis.simulate;

import datumpeg.analysis.measuring.Axis;

/**
 * How a column truly stands: its lean at column height, and its bow between foot and top.
 *
 * <p>At height z of a column of height H the axis is off plumb by lean · z/H + 4 · bow · (z/H) · (1
 * − z/H): a parabola whose greatest deviation from the chord, at mid-height, is the bow. Its slope
 * is lean/H + 4 · bow/H · (1 − 2z/H), which at mid-height is that of the chord.
 *
 * @param leanAlongMetres top toward the higher frame number is positive
 * @param leanAcrossMetres top toward side B is positive
 * @param bowAlongMetres mid-height toward the higher frame number is positive
 * @param bowAcrossMetres mid-height toward side B is positive
 */
public record SimulatedColumn(
    double leanAlongMetres,
    double leanAcrossMetres,
    double bowAlongMetres,
    double bowAcrossMetres) {
  /** Plumb and straight. */
  public static final SimulatedColumn PLUMB = new SimulatedColumn(0, 0, 0, 0);

  /**
   * @throws IllegalArgumentException for a part that is not finite
   */
  public SimulatedColumn {
    double sum = leanAlongMetres + leanAcrossMetres + bowAlongMetres + bowAcrossMetres;
    if (!Double.isFinite(sum)) {
      throw new IllegalArgumentException(
          "A column's lean and bow need finite metres, found lean "
              + leanAlongMetres
              + ", "
              + leanAcrossMetres
              + ", bow "
              + bowAlongMetres
              + ", "
              + bowAcrossMetres
              + ".");
    }
  }

  /** Straight, with this lean. */
  public static SimulatedColumn leaning(double alongMetres, double acrossMetres) {
    return new SimulatedColumn(alongMetres, acrossMetres, 0, 0);
  }

  public double leanMetres(Axis axis) {
    return axis == Axis.ALONG ? leanAlongMetres : leanAcrossMetres;
  }

  private double bowMetres(Axis axis) {
    return axis == Axis.ALONG ? bowAlongMetres : bowAcrossMetres;
  }

  /** How far the axis is off the plumb line through its foot, at a height above it. */
  public double offPlumbMetres(Axis axis, double upMetres, double columnHeightMetres) {
    double share = upMetres / columnHeightMetres;
    return leanMetres(axis) * share + 4 * bowMetres(axis) * share * (1 - share);
  }

  /** The angle from vertical at a height above the foot. */
  public double tiltRadians(Axis axis, double upMetres, double columnHeightMetres) {
    double share = upMetres / columnHeightMetres;
    double rise = leanMetres(axis) + 4 * bowMetres(axis) * (1 - 2 * share);
    return StrictMath.atan(rise / columnHeightMetres);
  }
}
