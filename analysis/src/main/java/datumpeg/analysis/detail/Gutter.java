package datumpeg.analysis.detail;

import java.util.ArrayList;
import java.util.List;

/**
 * The gutter of one side.
 *
 * @param outletMetres x of its outlet
 * @param fall metres of fall for each metre toward the outlet
 * @param bracketSpacingMetres greatest distance between two brackets
 */
public record Gutter(double outletMetres, double fall, double bracketSpacingMetres) {
  /** Greatest bracket spacing where the project gives none (common practice, no source). */
  public static final double USUAL_BRACKET_SPACING_METRES = 1;

  /** Keeps 18 bays of a metre 18 where the length carries a rounding error. */
  private static final double ROUNDING = 1e-9;

  /**
   * @throws IllegalArgumentException for a negative fall or a spacing that is not positive
   */
  public Gutter {
    if (!(fall >= 0) || !(bracketSpacingMetres > 0) || !Double.isFinite(outletMetres)) {
      throw new IllegalArgumentException(
          "The gutter falls "
              + fall
              + " m a metre toward x = "
              + outletMetres
              + " m on brackets "
              + bracketSpacingMetres
              + " m apart; expected a fall of 0 or more and a spacing of more than 0.");
    }
  }

  /** Design height above the outlet of the gutter at x. */
  public double heightAboveOutletMetres(double xMetres) {
    return fall * Math.abs(xMetres - outletMetres);
  }

  /** Places of brackets, evenly spaced from one end to the other: at least length/spacing + 1. */
  public List<Double> bracketsMetres(double lengthMetres) {
    int spaces = Math.max(1, (int) Math.ceil(lengthMetres / bracketSpacingMetres - ROUNDING));
    List<Double> places = new ArrayList<>();
    for (int i = 0; i <= spaces; i++) {
      places.add(lengthMetres * i / spaces);
    }
    return List.copyOf(places);
  }
}
