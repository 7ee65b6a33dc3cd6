package datumpeg.analysis.drift;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The values of one check, in metres or radians.
 *
 * @param byLabel the values of each of the method's labels; a reading may be repeated
 */
public record CheckValues(CheckMethod method, Map<String, List<Double>> byLabel) {

  /**
   * @throws IllegalArgumentException if a value is missing, not finite, of a label the method does
   *     not have, or given twice where one is meant
   */
  public CheckValues {
    Map<String, List<Double>> copy = new LinkedHashMap<>();
    byLabel.forEach((label, values) -> copy.put(label, List.copyOf(values)));
    byLabel = copy;
    for (String label : byLabel.keySet()) {
      require(method.labels().contains(label), method, "has no value " + label);
    }
    for (String label : method.labels()) {
      List<Double> values = byLabel.getOrDefault(label, List.of());
      boolean optional = label.equals("known-uncertainty");
      require(optional || !values.isEmpty(), method, "lacks a value " + label);
      require(values.stream().allMatch(Double::isFinite), method, "has a value that is no number");
      boolean single = label.startsWith("known") || label.startsWith("sight");
      require(!single || values.size() <= 1, method, "has more than one value " + label);
    }
    if (method == CheckMethod.TWO_PEG) {
      double sights = only(byLabel, "sight-P") - only(byLabel, "sight-Q");
      require(
          Math.abs(sights) >= LEAST_SIGHTS,
          method,
          "has sights that differ by " + Math.abs(sights) + " m, expected 5 m or more");
    }
  }

  /**
   * With sights more alike than this a tilted line of sight is lost in the reading of the staff.
   */
  private static final double LEAST_SIGHTS = 5;

  private static void require(boolean right, CheckMethod method, String wrong) {
    if (!right) {
      throw new IllegalArgumentException(
          "the check "
              + method.text()
              + " "
              + wrong
              + "; it takes "
              + String.join(", ", method.labels()));
    }
  }

  private static double only(Map<String, List<Double>> byLabel, String label) {
    return byLabel.getOrDefault(label, List.of()).get(0);
  }

  List<Double> of(String label) {
    return byLabel.getOrDefault(label, List.of());
  }

  double mean(String label) {
    return of(label).stream().mapToDouble(Double::doubleValue).sum() / of(label).size();
  }
}
