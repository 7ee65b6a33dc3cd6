package datumpeg.analysis.conform;

import java.util.OptionalDouble;

/**
 * The rule a job applies to one check.
 *
 * @param source who says so, as printed beside every outcome
 */
public record Tolerance(LimitRule rule, String source) {

  /** Limits of a signed deviation. */
  public Limits signed(double sizeMetres) {
    return new Limits(
        finite(rule.lowerMetres(sizeMetres)), finite(rule.upperMetres(sizeMetres)), source);
  }

  /** The upper limit of a value that cannot be negative. */
  public Limits unsigned(double sizeMetres) {
    return new Limits(OptionalDouble.empty(), finite(rule.upperMetres(sizeMetres)), source);
  }

  private static OptionalDouble finite(double metres) {
    return Double.isInfinite(metres) ? OptionalDouble.empty() : OptionalDouble.of(metres);
  }
}
