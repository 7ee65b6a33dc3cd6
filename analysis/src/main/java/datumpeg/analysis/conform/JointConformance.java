package datumpeg.analysis.conform;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.List;

/**
 * Between which bounds the probability lies that several outcomes all conform.
 *
 * <p>Outcomes of one stage share meters and points, so their probabilities must not be multiplied.
 * Whatever they share, all conform with at least 1 − Σ(1 − pᵢ) (Bonferroni) and at most the least
 * of the pᵢ (Fréchet; both elementary). Worked: 0.99, 0.97 and 0.80 give 0.76 to 0.80.
 *
 * @param least at least this
 * @param most at most this
 * @param count of outcomes
 */
public record JointConformance(double least, double most, int count) {

  /** Of the outcomes that have limits and are not stale. */
  public static JointConformance of(List<Outcome> outcomes) {
    return ofProbabilities(
        outcomes.stream()
            .filter(outcome -> !outcome.stale() && outcome.probability().isPresent())
            .map(outcome -> outcome.probability().orElse(0))
            .toList());
  }

  /** Of outcomes or groups of them by their probabilities; 1 for none. */
  public static JointConformance ofProbabilities(List<Double> probabilities) {
    double missing = 0;
    double most = 1;
    for (double probability : probabilities) {
      missing += 1 - probability;
      most = Math.min(most, probability);
    }
    return new JointConformance(Math.max(0, 1 - missing), most, probabilities.size());
  }

  /** In whole per cents, such as "76 to 80 %"; never rounded up to certainty. */
  public String words() {
    String low = percent(least);
    String high = percent(most);
    return low.equals(high) ? low + " %" : low + " to " + high + " %";
  }

  private static String percent(double probability) {
    if (probability > 0.99 && probability < 1) {
      double tenths = Math.floor(probability * 1000) / 10;
      return tenths > 99.8 ? "over 99.8" : LengthDisplay.decimal(tenths, 1);
    }
    return LengthDisplay.decimal(Math.floor(probability * 100), 0);
  }
}
