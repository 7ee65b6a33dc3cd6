package datumpeg.analysis.drift;

import datumpeg.analysis.conform.Conformance;
import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.stat.ChiSquared;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a check says of a meter: its error at one length, held against what one reading may be off.
 *
 * <p>The limit is the expanded uncertainty (k = 2) of one reading as the meter's accuracy states
 * it: 2·√(repeatability² + resolution²/12 + common² + (per metre · L)²). The verdict is decided by
 * the probability that the true error is within it (JCGM 106:2012, 7.3 and 7.4), not by the error
 * found.
 *
 * @param error in metres or radians, with its standard uncertainty
 * @param lengthMetres at which it was found; 0 for a tilt
 * @param limit what one reading may be off, above 0
 * @param probability that the true error is within the limit
 * @param scatterProbability of readings that scatter at least as much, were the meter as repeatable
 *     as stated; empty where nothing was repeated
 */
public record MeterCheck(
    CheckMethod method,
    Estimate error,
    double lengthMetres,
    double limit,
    double probability,
    Verdict verdict,
    OptionalDouble scatterProbability) {

  /** Evaluates a check of a meter. */
  public static MeterCheck of(CheckValues values, Meter meter, DecisionRule rule) {
    MeterAccuracy accuracy = meter.accuracy();
    double length = length(values);
    Estimate error = error(values, accuracy);
    double scaled = accuracy.perMetre() * length;
    double limit =
        Estimate.COVERAGE_FACTOR
            * Math.sqrt(
                accuracy.independentVariance()
                    + accuracy.common() * accuracy.common()
                    + scaled * scaled);
    double probability =
        Conformance.probabilityWithin(
            error, new Limits(OptionalDouble.of(-limit), OptionalDouble.of(limit), meter.stated()));
    return new MeterCheck(
        values.method(),
        error,
        length,
        limit,
        probability,
        rule.verdict(probability),
        scatter(values, accuracy));
  }

  private static double length(CheckValues values) {
    return switch (values.method()) {
      case KNOWN_DISTANCE -> values.mean("known");
      case ZERO_CONSTANT, REVERSAL -> 0;
      case TWO_PEG -> Math.abs(values.mean("sight-P") - values.mean("sight-Q"));
    };
  }

  /**
   * The error, its sign that of a reading that is too large.
   *
   * <p>Zero constant: each of the three readings holds it once, so AB + BC − AC holds it once
   * (common practice in the calibration of distance meters; recalled: J. M. Rüeger, Electronic
   * Distance Measurement, 1996, not looked up). Two pegs: from the middle a tilted line of sight
   * raises both readings alike, so the difference found there is right; from beside one peg the
   * difference is off by the tilt times the difference of the sights (the collimation check of
   * levelling, common practice, no source). Reversal: face 1 reads lean + zero error, face 2 −lean
   * + zero error.
   */
  private static Estimate error(CheckValues values, MeterAccuracy accuracy) {
    double variance = accuracy.independentVariance();
    return switch (values.method()) {
      case KNOWN_DISTANCE -> {
        double expanded =
            values.of("known-uncertainty").isEmpty() ? 0 : values.mean("known-uncertainty");
        double known = expanded / Estimate.COVERAGE_FACTOR;
        yield new Estimate(
            values.mean("reading") - values.mean("known"),
            Math.sqrt(variance * shares(values, "reading") + known * known));
      }
      case ZERO_CONSTANT ->
          new Estimate(
              values.mean("AB") + values.mean("BC") - values.mean("AC"),
              Math.sqrt(variance * shares(values, "AB", "BC", "AC")));
      case TWO_PEG ->
          new Estimate(
              sighted(values),
              Math.sqrt(variance * shares(values, "middle-P", "middle-Q", "near-P", "near-Q")));
      case REVERSAL ->
          new Estimate(
              (values.mean("face-1") + values.mean("face-2")) / 2,
              Math.sqrt(variance * shares(values, "face-1", "face-2")) / 2);
    };
  }

  /** What a reading over the longer sight is too high by, were the shorter one without length. */
  private static double sighted(CheckValues values) {
    double near = values.mean("near-P") - values.mean("near-Q");
    double middle = values.mean("middle-P") - values.mean("middle-Q");
    double sights = values.mean("sight-P") - values.mean("sight-Q");
    return (near - middle) * Math.signum(sights);
  }

  /** The sum of 1/n over the values that are means of n. */
  private static double shares(CheckValues values, String... labels) {
    double sum = 0;
    for (String label : labels) {
      sum += 1.0 / values.of(label).size();
    }
    return sum;
  }

  /** Squares about each label's mean over the stated variance are χ² (textbook statistics). */
  private static OptionalDouble scatter(CheckValues values, MeterAccuracy accuracy) {
    double squares = 0;
    int freedoms = 0;
    for (List<Double> repeats : values.byLabel().values()) {
      double mean = repeats.stream().mapToDouble(Double::doubleValue).sum() / repeats.size();
      for (double value : repeats) {
        squares += (value - mean) * (value - mean);
      }
      freedoms += repeats.size() - 1;
    }
    double variance = accuracy.independentVariance();
    return freedoms == 0 || variance == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(ChiSquared.survival(squares / variance, freedoms));
  }
}
