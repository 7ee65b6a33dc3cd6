package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.ChangeEffects;
import datumpeg.analysis.measuring.TargetWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The further reading that best tells suspects apart.
 *
 * @param target what to read, such as "slab.A1-slab.B4"
 * @param again whether it was read already
 * @param separates how many of the pairs of suspects it separates
 * @param pairs how many there are, in both orders
 */
public record NextReading(String target, boolean again, int separates, int pairs) {
  /**
   * If suspect k is true, suspect l misfits by an expected (d_k - d_l)'W(d_k - d_l) more; beyond
   * the square of 2.8016 a test at 5 % tells them apart with probability 80 %.
   */
  private static final double SEPARATE = 2.8016 * 2.8016;

  /** An instruction for a person. */
  public String words() {
    String what = TargetWords.named(target);
    return again ? "Read " + what + " once more" : "Measure " + what + " as well";
  }

  /** The candidate that separates most, the likelier suspects counting more; empty if none does. */
  static Optional<NextReading> among(List<Suspicion> suspects, FurtherReadings further) {
    ChangeEffects effects = further.fit().changeEffects();
    Optional<NextReading> best = Optional.empty();
    double most = 0;
    for (FurtherReadings.Candidate candidate : further.candidates()) {
      Gain gain = new Gain(effects, further, candidate.id());
      double score = 0;
      int separates = 0;
      int pairs = 0;
      for (int k = 0; k < suspects.size(); k++) {
        for (Suspicion other : suspects) {
          if (Set.copyOf(other.readingIds()).equals(Set.copyOf(suspects.get(k).readingIds()))) {
            continue;
          }
          pairs++;
          double apart = gain.separation(suspects.get(k), other);
          separates += apart >= SEPARATE ? 1 : 0;
          score += Math.min(apart, SEPARATE) / (k + 1);
        }
      }
      if (separates > 0 && score > most * (1 + 1e-6)) {
        most = score;
        best =
            Optional.of(new NextReading(candidate.target(), candidate.again(), separates, pairs));
      }
    }
    return best;
  }

  /**
   * W of the network with one more reading of row a and standard uncertainty s: W + g g' / (s² + a'
   * N⁻¹ a), g = P A N⁻¹ a, from the inverse of a sum with a dyad (W. W. Hager, Updating the inverse
   * of a matrix, SIAM Review 31, 1989, eq. 1, recalled). Of the candidate read with a rough σ, g =
   * -σ² W(., c) and a' N⁻¹ a = σ² - σ⁴ W(c, c).
   */
  private static final class Gain {
    private final ChangeEffects effects;
    private final Map<String, Double> candidate;
    private final double rough;
    private final double denominator;

    Gain(ChangeEffects effects, FurtherReadings further, String id) {
      this.effects = effects;
      this.candidate = Map.of(id, 1.0);
      this.rough = further.roughStandardUncertainty() * further.roughStandardUncertainty();
      double own = further.standardUncertainty() * further.standardUncertainty();
      double known = rough - rough * rough * effects.product(candidate, candidate);
      this.denominator = own + Math.max(0, known);
    }

    /** How much worse the other fits, its own offsets estimated afresh, if the one is true. */
    double separation(Suspicion one, Suspicion other) {
      Map<String, Double> difference = new HashMap<>(change(one));
      List<Map<String, Double>> free = new ArrayList<>();
      for (Slip part : other.slip().parts()) {
        if (part.hasUnknownOffset()) {
          free.add(SlipTrial.direction(part));
        } else {
          change(part, other).forEach((id, value) -> difference.merge(id, -value, Double::sum));
        }
      }
      return product(difference, difference) - alongFree(difference, free);
    }

    /** What of a change one offset, or two, would take up. */
    private double alongFree(Map<String, Double> change, List<Map<String, Double>> free) {
      if (free.isEmpty()) {
        return 0;
      }
      Map<String, Double> first = free.get(0);
      double along = product(change, first);
      double taken = along * along / product(first, first);
      if (free.size() == 1) {
        return taken;
      }
      Map<String, Double> second = new HashMap<>(free.get(1));
      double share = product(second, first) / product(first, first);
      first.forEach((id, value) -> second.merge(id, -share * value, Double::sum));
      double beside = product(second, second);
      double further = product(change, second);
      return beside > 0 ? taken + further * further / beside : taken;
    }

    private double product(Map<String, Double> a, Map<String, Double> b) {
      double left = rough * effects.product(a, candidate);
      double right = rough * effects.product(b, candidate);
      return effects.product(a, b) + left * right / denominator;
    }

    private static Map<String, Double> change(Suspicion suspicion) {
      return change(suspicion.slip(), suspicion);
    }

    private static Map<String, Double> change(Slip slip, Suspicion suspicion) {
      Map<String, Double> change = new HashMap<>();
      for (SlipReading reading : slip.readings()) {
        double instead = suspicion.instead().getOrDefault(reading.id(), reading.value());
        change.put(reading.id(), reading.sign() * (instead - reading.value()));
      }
      return change;
    }
  }
}
