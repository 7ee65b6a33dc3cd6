package datumpeg.analysis.compare;

import java.util.ArrayList;
import java.util.List;

/** The differences between all groups that have two jobs or more. */
final class Differences {
  private final List<ComparedGroup> groups;
  private final double confidence;
  private final JointQuantiles quantiles;

  Differences(List<ComparedGroup> groups, double confidence, JointQuantiles quantiles) {
    this.quantiles = quantiles;
    this.groups = groups.stream().filter(group -> group.jobCount() > 1).toList();
    this.confidence = confidence;
  }

  List<Difference> all() {
    List<Difference> differences = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      for (int j = i + 1; j < groups.size(); j++) {
        differences.add(between(groups.get(i), groups.get(j)));
      }
    }
    return differences;
  }

  private Difference between(ComparedGroup one, ComparedGroup other) {
    double first = square(one.standardError().orElseThrow());
    double second = square(other.standardError().orElseThrow());
    int degrees = degrees(first, one.jobCount(), second, other.jobCount());
    double quantile = quantiles.of(confidence, groups.size(), degrees);
    return new Difference(
        one.name(),
        other.name(),
        other.mean() - one.mean(),
        quantile / Math.sqrt(2) * Math.sqrt(first + second),
        degrees);
  }

  /**
   * B. L. Welch, Biometrika 34 (1947): rounded down, at least 1. Where nothing varies, as pooled.
   */
  private static int degrees(double first, int firstCount, double second, int secondCount) {
    if (first + second == 0) {
      return firstCount + secondCount - 2;
    }
    double share = first / (first + second);
    double inverse =
        share * share / (firstCount - 1) + (1 - share) * (1 - share) / (secondCount - 1);
    return Math.max(1, (int) Math.floor(1 / inverse + 1e-9));
  }

  private static double square(double value) {
    return value * value;
  }
}
