package datumpeg.analysis.compare;

import datumpeg.analysis.stat.StudentizedRange;
import java.util.HashMap;
import java.util.Map;

/** Quantiles of the studentized range, each worked out once: one costs some 50 ms. One thread. */
final class JointQuantiles {
  private final Map<Key, Double> known = new HashMap<>();

  private record Key(double confidence, int groups, int degreesOfFreedom) {}

  double of(double confidence, int groups, int degreesOfFreedom) {
    return known.computeIfAbsent(
        new Key(confidence, groups, degreesOfFreedom),
        key -> StudentizedRange.quantile(key.confidence, key.groups, key.degreesOfFreedom));
  }
}
