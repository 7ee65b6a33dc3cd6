package datumpeg.analysis.slip;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.stat.ChiSquared;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One slip that would explain the readings. A suspicion, not a correction.
 *
 * @param slip what may have happened
 * @param instead what would have been read without it, by reading id, in metres or radians
 * @param squareSumBefore v'Pv of the readings as they are
 * @param squareSum v'Pv with what would have been read instead
 * @param degreesOfFreedom of that: one less for each estimated offset
 * @param offsets reading - truth of each offset that was estimated
 * @param chance probability of so great a drop of v'Pv, among all distinguishable slips of its
 *     family, if nothing slipped
 */
public record Suspicion(
    Slip slip,
    Map<String, Double> instead,
    double squareSumBefore,
    double squareSum,
    int degreesOfFreedom,
    List<Double> offsets,
    double chance) {
  /** 95 % point of chi-squared with one degree of freedom. */
  static final double ONE_MORE_QUANTITY = ChiSquared.quantile(0.95, 1);

  public Suspicion {
    instead = Collections.unmodifiableMap(new LinkedHashMap<>(instead));
    offsets = List.copyOf(offsets);
  }

  /** Probability of at least this misfit if the slip happened and nothing else did. */
  public double probability() {
    return degreesOfFreedom > 0 ? ChiSquared.survival(squareSum, degreesOfFreedom) : 1;
  }

  /** v'Pv plus 3.841 for each estimated offset: the less, the better explained. */
  public double score() {
    return squareSum + offsets.size() * ONE_MORE_QUANTITY;
  }

  /** Whether it is two slips at once. */
  public boolean isOfTwo() {
    return slip.parts().size() > 1;
  }

  /** Ids of the readings it touches. */
  public List<String> readingIds() {
    return slip.readings().stream().map(SlipReading::id).toList();
  }

  /** How far the readings are from what would have been read instead; the largest of them. */
  double size() {
    return slip.readings().stream()
        .mapToDouble(r -> Math.abs(r.value() - instead.getOrDefault(r.id(), r.value())))
        .max()
        .orElse(0);
  }

  /** A sentence: what happened, what was read, what would have been read, and how well it fits. */
  public String words() {
    return capitalised(slip.words()) + ": " + changes() + "; then " + fits() + ".";
  }

  private String changes() {
    List<SlipReading> readings = slip.readings();
    String first = readings.stream().limit(4).map(this::change).collect(Collectors.joining(", "));
    return readings.size() > 4 ? first + " and " + (readings.size() - 4) + " more" : first;
  }

  private String change(SlipReading reading) {
    double other = instead.getOrDefault(reading.id(), reading.value());
    String read = reading.shown(reading.value());
    return (slip.readings().size() == 1 ? read : reading.targetWords() + ", read as " + read + ",")
        + " would be "
        + reading.shown(other)
        + " ("
        + reading.shownDifference(other - reading.value())
        + ")";
  }

  private String fits() {
    String misfit =
        "misfit v'Pv "
            + LengthDisplay.decimal(squareSumBefore, 1)
            + " before, "
            + LengthDisplay.decimal(squareSum, 1)
            + " then";
    return degreesOfFreedom > 0
        ? "the readings fit ("
            + misfit
            + ", chance of that much "
            + LengthDisplay.decimal(probability() * 100, 1)
            + " %)"
        : "the readings fit, with nothing left to check it (" + misfit + ")";
  }

  private static String capitalised(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
