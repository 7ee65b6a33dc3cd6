package datumpeg.analysis.remedy;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;

/**
 * Opening or closing a rafter pair at its tips. At fixed rafter length the apex moves −½·cot θ a
 * unit: opened by 8 mm at 10° it comes down by 22.7 mm.
 */
public final class RafterTips {
  /** Flatter than this the apex cannot be reckoned. */
  private static final double LEAST_PITCH = 0.01;

  private RafterTips() {}

  /** What to do about a tip distance; positive is too wide. */
  public static String remedy(Outcome tips, SetOut setOut, Movability movability) {
    String move =
        (tips.deviation() > 0 ? "Close the tips by " : "Open the tips by ")
            + Millimetres.with(tips.deviation(), tips.expandedUncertainty());
    double pitch = setOut.pitchFromRafterLengthRadians().orElse(setOut.building().pitchRadians());
    if (pitch < LEAST_PITCH) {
      return Movability.said(move, movability.tops());
    }
    double apex = SetOut.apexMovePerTipDistance(pitch) * -tips.deviation();
    return Movability.said(
        move
            + "; at fixed rafter length the apex "
            + (apex > 0 ? "rises" : "comes down")
            + " by "
            + Millimetres.with(
                apex, Math.abs(SetOut.apexMovePerTipDistance(pitch)) * tips.expandedUncertainty()),
        movability.tops());
  }
}
