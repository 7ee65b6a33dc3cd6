package datumpeg.analysis.stat;

import java.util.List;

/**
 * Whether groups are equally spread: an analysis of variance of how far each value is from the
 * centre of its group. Sensitive to little but spread, also where values are not normal.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.10.
 */
public final class SpreadTest {
  /** What distances are taken from. The two differ, and may disagree: always say which. */
  public enum Centre {
    /** H. Levene, 1960. */
    MEAN,
    /** M. B. Brown and A. B. Forsythe, 1974: holds its level better for skewed values. */
    MEDIAN
  }

  private SpreadTest() {}

  /**
   * The variance table of the distances; its ratio is the test's W.
   *
   * @throws IllegalArgumentException as {@link OneWayVariance#of}
   */
  public static OneWayVariance of(List<List<Double>> groups, Centre centre) {
    return OneWayVariance.of(groups.stream().map(group -> distances(group, centre)).toList());
  }

  /** How far each value is from the centre of all, never negative; empty for none. */
  public static List<Double> distances(List<Double> values, Centre centre) {
    if (values.isEmpty()) {
      return List.of();
    }
    double from = centre == Centre.MEAN ? mean(values) : median(values);
    return values.stream().map(value -> Math.abs(value - from)).toList();
  }

  /**
   * The middle value, or the mean of the middle two.
   *
   * @throws IllegalArgumentException if there are none
   */
  public static double median(List<Double> values) {
    if (values.isEmpty()) {
      throw new IllegalArgumentException("There is no median of no values.");
    }
    List<Double> sorted = values.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : sorted.get(half - 1) + (sorted.get(half) - sorted.get(half - 1)) / 2;
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(value -> value).average().orElseThrow();
  }
}
