package datumpeg.analysis.conform;

import datumpeg.analysis.uncertainty.Estimate;
import java.util.OptionalDouble;

/**
 * Zones beside the limits inside which nothing is decided: g = factor · U.
 *
 * <p>Conforming only inside the limits drawn in by g, nonconforming only beyond the limits moved
 * out by g, undecided between (the rules of ISO 14253-1, from memory, verify against your copy). U
 * is expanded with k = 2. Worked: limits ±10 mm, U = 3 mm, factor 1: conforming up to 7 mm,
 * nonconforming beyond 13 mm.
 *
 * @param name how it is called beside what it decided
 * @param factor g / U: 1 for U itself; 0.82 gives the 1.645 standard uncertainties of a one-sided
 *     95 %
 */
public record GuardBand(String name, double factor) {
  /** The name a job asks for it by. */
  public static final String ISO_14253_1 = "ISO 14253-1";

  /**
   * @throws IllegalArgumentException unless 0 &lt;= factor &lt;= 10
   */
  public GuardBand {
    if (!(factor >= 0 && factor <= 10)) {
      throw new IllegalArgumentException(
          "The guard band's factor is " + factor + "; expected 0 to 10.");
    }
  }

  /** Its width beside a limit, for a value with this expanded uncertainty. */
  public double width(double expandedUncertainty) {
    return factor * expandedUncertainty;
  }

  /** The verdict on a value, by the zone it lies in. */
  public Verdict verdict(Estimate deviation, Limits limits) {
    return zone(
        deviation.value(),
        limits.lower(),
        limits.upper(),
        width(deviation.expanded()),
        width(deviation.expanded()));
  }

  /**
   * The verdict on a value whose bounds for accepting and for rejecting differ, such as a spread.
   *
   * @param inside width of the zone inside the limits
   * @param outside width of the zone outside
   */
  static Verdict zone(
      double value, OptionalDouble lower, OptionalDouble upper, double inside, double outside) {
    double least = lower.orElse(Double.NEGATIVE_INFINITY);
    double most = upper.orElse(Double.POSITIVE_INFINITY);
    if (value >= least + inside && value <= most - inside) {
      return Verdict.CONFORMING;
    }
    return value < least - outside || value > most + outside
        ? Verdict.NONCONFORMING
        : Verdict.UNDECIDED;
  }
}
