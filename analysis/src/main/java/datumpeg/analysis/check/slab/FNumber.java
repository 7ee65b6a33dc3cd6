package datumpeg.analysis.check.slab;

import datumpeg.analysis.stat.Normal;
import datumpeg.analysis.stat.StudentT;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How flat (FF) or how level (FL) a floor is, from bends or rises along a line: F = c / (3·s +
 * |m|), m and s their mean and sample standard deviation (ASTM E1155 and E1155M, from memory:
 * verify against your copy).
 *
 * <p>The uncertainty is that of a sample: s is known to s/√(2·ν), m to s/√ν', where ν and ν' count
 * the values as if they were independent, from their autocorrelation along the line (M. S.
 * Bartlett, On the theoretical specification and sampling properties of autocorrelated time series,
 * Suppl. J. R. Stat. Soc. 8, 1946; from memory), widened by Student's t. To it comes what the
 * level's own scatter roughens the floor: F with that scatter taken out again, less F.
 *
 * @param value the number; a larger one is a flatter floor
 * @param sampled standard uncertainty of the number as that of a sample, as if normal
 * @param roughened F without the level's own scatter, less F
 * @param count values it was found from
 * @param freedom degrees of freedom of s
 */
record FNumber(double value, double sampled, double roughened, int count, double freedom) {
  /** c of FF for steps of 300 mm, in metres (E1155M, from memory). */
  static final double METRIC_FLATNESS_METRES = 0.1158;

  /** c of FF for steps of 12 in: 4.57 in (E1155, from memory). */
  static final double FOOT_FLATNESS_METRES = 4.57 * 0.0254;

  /** c of FL: 12.5 in, 317.5 mm (E1155, from memory). */
  static final double LEVELNESS_METRES = 12.5 * 0.0254;

  /** Fewer values give no standard deviation worth the name. */
  private static final int LEAST_COUNT = 3;

  /** The scatter taken out leaves at least this share of the standard deviation. */
  private static final double LEAST_LEFT = 0.25;

  private static final double COVERED = 0.975;

  /**
   * The number of one line.
   *
   * @param constantMetres c
   * @param values bends or rises in metres, in order along the line
   * @param lags how many steps apart two of them still share heights
   * @return empty for fewer than three values, or a floor without any bend or rise at all
   */
  static Optional<FNumber> of(double constantMetres, List<Linearised> values, int lags) {
    int n = values.size();
    if (n < LEAST_COUNT) {
      return Optional.empty();
    }
    double mean = values.stream().mapToDouble(Linearised::value).average().orElseThrow();
    double s = deviation(values, mean);
    double divisor = 3 * s + Math.abs(mean);
    if (!(divisor > 0)) {
      return Optional.empty();
    }
    List<Double> correlations = s > 0 ? correlations(values, mean, lags) : List.of();
    double freedom = (n - 1) / Math.max(1, inflation(correlations, n, true));
    double ofMean = Math.max(0, inflation(correlations, n, false)) * s * s / n;
    double noiseOfMean = Linearised.mean(values).variance();
    double ofDivisor = Math.sqrt(9 * s * s / (2 * Math.max(1, freedom)) + ofMean + noiseOfMean);
    double value = constantMetres / divisor;
    double sampled = value * ofDivisor / divisor;
    double smooth = Math.sqrt(Math.max(s * s - noise(values), square(LEAST_LEFT * s)));
    double roughened = constantMetres / (3 * smooth + Math.abs(mean)) - value;
    return Optional.of(new FNumber(value, sampled, roughened, n, freedom));
  }

  /**
   * Lines taken together: n/F² = Σ nᵢ/Fᵢ² (E1155, combination of test results weighted by the
   * number of readings; from memory).
   *
   * @throws IllegalArgumentException for no lines
   */
  static FNumber combined(List<FNumber> lines) {
    if (lines.isEmpty()) {
      throw new IllegalArgumentException("No line has a number to combine; expected at least one.");
    }
    double weights = lines.stream().mapToDouble(FNumber::count).sum();
    double sum = lines.stream().mapToDouble(line -> line.count / square(line.value)).sum();
    double value = Math.sqrt(weights / sum);
    double sampled = 0;
    double roughened = 0;
    for (FNumber line : lines) {
      double ratio = value / line.value;
      double sensitivity = line.count / weights * ratio * ratio * ratio;
      sampled += square(sensitivity * line.sampled);
      roughened += sensitivity * line.roughened;
    }
    return new FNumber(
        value,
        Math.sqrt(sampled),
        roughened,
        (int) weights,
        lines.stream().mapToDouble(FNumber::freedom).sum());
  }

  /** Of the number: as a sample, and for what the level's scatter may have added. */
  double standardUncertainty() {
    return Estimate.combine(sampled * student(freedom), roughened);
  }

  private static double deviation(List<Linearised> values, double mean) {
    double sum = values.stream().mapToDouble(value -> square(value.value() - mean)).sum();
    return Math.sqrt(sum / (values.size() - 1));
  }

  /** What the errors of the readings add to s² in the mean. */
  private static double noise(List<Linearised> values) {
    double sum = values.stream().mapToDouble(Linearised::variance).sum();
    return Math.max(0, sum - values.size() * Linearised.mean(values).variance())
        / (values.size() - 1);
  }

  /** Σ (xᵢ − m)(xᵢ₋ₖ − m) / Σ (xᵢ − m)² for each lag k. */
  static List<Double> correlations(List<Linearised> values, double mean, int lags) {
    double whole = values.stream().mapToDouble(value -> square(value.value() - mean)).sum();
    List<Double> correlations = new ArrayList<>();
    for (int lag = 1; lag <= Math.min(lags, values.size() - 2); lag++) {
      double sum = 0;
      for (int i = lag; i < values.size(); i++) {
        sum += (values.get(i).value() - mean) * (values.get(i - lag).value() - mean);
      }
      correlations.add(sum / whole);
    }
    return correlations;
  }

  /** How many values go into one independent one: for s if squared, else for the mean. */
  private static double inflation(List<Double> correlations, int n, boolean squared) {
    double sum = 1;
    for (int lag = 1; lag <= correlations.size(); lag++) {
      double r = correlations.get(lag - 1);
      sum += 2 * (1 - (double) lag / n) * (squared ? r * r : r);
    }
    return sum;
  }

  /** How much wider than normal 95 % are, for so many degrees of freedom. */
  private static double student(double freedom) {
    return StudentT.quantile(COVERED, Math.max(1, freedom)) / Normal.quantile(COVERED);
  }

  private static double square(double x) {
    return x * x;
  }
}
