package datumpeg.analysis.stat;

import java.util.List;

/**
 * One-way analysis of variance: how much groups differ against how much there is within them.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.3.3 and 7.4.3.4. Sums of squares
 * are taken about means found before, so that large values with small differences lose nothing.
 *
 * @param betweenSquares sum of squares of the groups' means about the mean of all
 * @param betweenDegrees groups − 1
 * @param withinSquares sum of squares about the groups' means
 * @param withinDegrees values − groups
 */
public record OneWayVariance(
    double betweenSquares, int betweenDegrees, double withinSquares, int withinDegrees) {

  /**
   * @throws IllegalArgumentException unless there are two groups or more, none empty, all numbers
   *     finite, and more values than groups
   */
  public static OneWayVariance of(List<List<Double>> groups) {
    int count = groups.stream().mapToInt(List::size).sum();
    if (groups.size() < 2
        || count <= groups.size()
        || groups.stream().anyMatch(group -> group.isEmpty())) {
      throw new IllegalArgumentException(
          "An analysis of variance needs two groups or more, none empty, and more values than"
              + " groups; found "
              + groups.stream().map(List::size).toList()
              + " values.");
    }
    double mean = groups.stream().mapToDouble(group -> mean(group) * group.size()).sum() / count;
    double between = 0;
    double within = 0;
    for (List<Double> group : groups) {
      double own = mean(group);
      between += group.size() * (own - mean) * (own - mean);
      for (double value : group) {
        within += (value - own) * (value - own);
      }
    }
    return new OneWayVariance(between, groups.size() - 1, within, count - groups.size());
  }

  /**
   * Mean square between over mean square within; infinite where nothing varies within the groups
   * that differ, 0 where nothing varies at all.
   */
  public double ratio() {
    if (withinSquares == 0) {
      return betweenSquares == 0 ? 0 : Double.POSITIVE_INFINITY;
    }
    return (betweenSquares / betweenDegrees) / (withinSquares / withinDegrees);
  }

  /** Probability of a ratio at least as large if the groups did not differ. */
  public double probability() {
    return FisherF.survival(ratio(), betweenDegrees, withinDegrees);
  }

  /** Mean as first value + mean difference from it, so that large values lose no digits. */
  private static double mean(List<Double> values) {
    double first = values.get(0);
    double sum = 0;
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "An analysis of variance found " + value + "; expected finite numbers.");
      }
      sum += value - first;
    }
    return first + sum / values.size();
  }
}
