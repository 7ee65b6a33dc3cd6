package datumpeg.analysis.uncertainty;

import java.util.List;

/**
 * One contribution to a combined standard uncertainty, with how well it is itself known.
 *
 * @param standardUncertainty of the result through this input, not negative
 * @param degreesOfFreedom above 0; {@link Double#POSITIVE_INFINITY} for a part taken as known
 */
public record UncertaintyComponent(double standardUncertainty, double degreesOfFreedom) {
  public UncertaintyComponent {
    if (!Double.isFinite(standardUncertainty) || standardUncertainty < 0) {
      throw new IllegalArgumentException(
          "uncertainty component: " + standardUncertainty + ", expected finite and at least 0");
    }
    if (Double.isNaN(degreesOfFreedom) || degreesOfFreedom <= 0) {
      throw new IllegalArgumentException(
          "uncertainty component: degrees of freedom " + degreesOfFreedom + ", expected above 0");
    }
  }

  /**
   * Degrees of freedom of the combination of independent components, by the Welch-Satterthwaite
   * formula (JCGM 100:2008, eq. (G.2b)), not truncated. Infinite when no component limits it.
   */
  public static double effectiveDegreesOfFreedom(List<UncertaintyComponent> independent) {
    double variance = 0;
    double denominator = 0;
    for (UncertaintyComponent component : independent) {
      double square = component.standardUncertainty * component.standardUncertainty;
      variance += square;
      denominator += square * square / component.degreesOfFreedom;
    }
    return denominator == 0 ? Double.POSITIVE_INFINITY : variance * variance / denominator;
  }
}
