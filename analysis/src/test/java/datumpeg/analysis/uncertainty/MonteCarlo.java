package datumpeg.analysis.uncertainty;

import datumpeg.analysis.simulate.NormalDraws;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/**
 * Propagation of distributions by drawing (JCGM 101:2008, clause 7): the second route beside the
 * first-order propagation of {@link Linearised}.
 */
final class MonteCarlo {
  static final int TRIALS = 200_000;

  private final double[] sorted;

  private MonteCarlo(double[] sorted) {
    this.sorted = sorted;
  }

  static MonteCarlo of(long seed, ToDoubleFunction<NormalDraws> model) {
    NormalDraws draws = new NormalDraws(seed);
    double[] values = new double[TRIALS];
    for (int i = 0; i < TRIALS; i++) {
      values[i] = model.applyAsDouble(draws);
    }
    Arrays.sort(values);
    return new MonteCarlo(values);
  }

  double mean() {
    return Arrays.stream(sorted).average().orElseThrow();
  }

  double standardDeviation() {
    double mean = mean();
    double squares = Arrays.stream(sorted).map(v -> (v - mean) * (v - mean)).sum();
    return Math.sqrt(squares / (sorted.length - 1));
  }

  double quantile(double probability) {
    return sorted[(int) (probability * sorted.length)];
  }

  /** Share of the values within an estimate's expanded uncertainty. */
  double within(Estimate estimate) {
    long inside =
        Arrays.stream(sorted)
            .filter(v -> Math.abs(v - estimate.value()) <= estimate.expanded())
            .count();
    return (double) inside / sorted.length;
  }
}
