package datumpeg.analysis.remedy;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.quantity.LengthDisplay;

/**
 * Pushing a lying wall frame square: which corner, which way, how far, and what its diagonals read
 * when it is right.
 *
 * <p>A frame of length a and height b that is right has two diagonals of √(a² + b²). Worked: 18 by
 * 3.6 m read 18356.5 mm both ways.
 */
public final class Racking {
  private Racking() {}

  /**
   * What to do about a rack.
   *
   * @param rack outcome of a wall, positive with its eave too far toward end n
   */
  public static String remedy(Outcome rack, SetOut setOut, Movability movability) {
    int n = setOut.building().portalFrameCount();
    boolean towardEnd1 = rack.deviation() > 0;
    double a = setOut.overallLengthMetres();
    double b = setOut.building().eaveHeightMetres();
    String move =
        "Push the eave corner at frame "
            + (towardEnd1 ? n : 1)
            + " of wall "
            + rack.target()
            + " toward "
            + (towardEnd1 ? "end 1" : "end n")
            + " by "
            + Millimetres.with(rack.deviation(), rack.expandedUncertainty());
    return Movability.said(
        move
            + "; it is right when both diagonals read "
            + LengthDisplay.decimal(Math.sqrt(a * a + b * b) * 1000, 1)
            + " mm",
        movability.bases());
  }
}
