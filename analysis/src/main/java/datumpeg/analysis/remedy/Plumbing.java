package datumpeg.analysis.remedy;

import datumpeg.analysis.building.PropGeometry;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Axis;
import java.util.Optional;

/** Bringing a leaning column upright. */
public final class Plumbing {
  /** What to do about a lean by more than a column is high. */
  public static final String NO_PROP = "Stop: no prop takes up such a lean. Ask the engineer.";

  private Plumbing() {}

  /**
   * What to do about a lean.
   *
   * @param lean outcome whose deviation is positive with the top toward the higher frame number, or
   *     toward B
   * @param columnHeightMetres the height the lean is given for
   */
  public static String remedy(
      Outcome lean,
      String column,
      Axis axis,
      Movability movability,
      double columnHeightMetres,
      Optional<PropGeometry> props) {
    String move =
        "top of column "
            + column
            + " toward "
            + towards(axis, -lean.deviation())
            + " by "
            + Millimetres.with(lean.deviation(), lean.expandedUncertainty());
    return movability.tops()
        ? "Push the "
            + move
            + " with its prop"
            + props.map(prop -> lengthening(prop, lean, axis, columnHeightMetres)).orElse("")
            + ", starting at the braced bay and working outward, then read it and its neighbours"
            + " again."
        : "The bolts are tight: ask the engineer before moving the " + move + ".";
  }

  /** Worked: 18.3 mm at 4.2 m, held at 2.8 m at 50°: 18.3 · 2.8/4.2 · cos 50° = 7.9 mm. */
  private static String lengthening(
      PropGeometry prop, Outcome lean, Axis axis, double columnHeightMetres) {
    return " (a prop standing toward "
        + towards(axis, lean.deviation())
        + " longer, one toward "
        + towards(axis, -lean.deviation())
        + " shorter, by "
        + Millimetres.with(
            prop.lengtheningMetres(lean.deviation(), columnHeightMetres),
            prop.lengtheningMetres(lean.expandedUncertainty(), columnHeightMetres))
        + ")";
  }

  /** Where a positive or negative direction points, in words. */
  public static String towards(Axis axis, double signed) {
    if (axis == Axis.ALONG) {
      return signed > 0 ? "end n" : "end 1";
    }
    return signed > 0 ? "side B" : "side A";
  }
}
