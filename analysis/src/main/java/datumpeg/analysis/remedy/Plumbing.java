package datumpeg.analysis.remedy;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;

/** Bringing a leaning column upright. */
public final class Plumbing {
  private Plumbing() {}

  /**
   * What to do about a lean.
   *
   * @param lean outcome whose deviation is positive with the top toward the higher frame number, or
   *     toward B
   */
  public static String remedy(Outcome lean, String column, Axis axis, Movability movability) {
    String move =
        "top of column "
            + column
            + " toward "
            + towards(axis, -lean.deviation())
            + " by "
            + Millimetres.with(lean.deviation(), lean.expandedUncertainty());
    return movability.tops()
        ? "Push the " + move + " with its prop, then read it again."
        : "The bolts are tight: ask the engineer before moving the " + move + ".";
  }

  /** Where a positive or negative direction points, in words. */
  public static String towards(Axis axis, double signed) {
    if (axis == Axis.ALONG) {
      return signed > 0 ? "end n" : "end 1";
    }
    return signed > 0 ? "side B" : "side A";
  }
}
