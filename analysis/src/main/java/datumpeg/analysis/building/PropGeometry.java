package datumpeg.analysis.building;

/**
 * How the props that hold a wall's columns stand.
 *
 * @param attachmentMetres height above the base where a prop holds its column
 * @param angleRadians of a prop from the ground
 */
public record PropGeometry(double attachmentMetres, double angleRadians) {
  /**
   * @throws IllegalArgumentException unless the height is positive and the angle between 0 and 90
   *     degrees
   */
  public PropGeometry {
    if (!(attachmentMetres > 0) || !(angleRadians > 0 && angleRadians < StrictMath.PI / 2)) {
      throw new IllegalArgumentException(
          "A prop holds its column at "
              + LengthText.millimetres(attachmentMetres)
              + " and stands at "
              + Math.round(StrictMath.toDegrees(angleRadians) * 10) / 10.0
              + " deg from the ground; expected a height above 0 and an angle between 0 and 90"
              + " deg.");
    }
  }

  /**
   * How much longer a prop must be to push a column's top by so much: the top's move scaled down to
   * the attachment, times cos of the angle (dx = dL / cos a, for moves small beside the prop).
   *
   * @param topHeightMetres height at which the move is wanted
   */
  public double lengtheningMetres(double topMoveMetres, double topHeightMetres) {
    return topMoveMetres * attachmentMetres / topHeightMetres * StrictMath.cos(angleRadians);
  }
}
