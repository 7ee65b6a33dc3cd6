package datumpeg.analysis.conform;

import java.util.Optional;

/**
 * Where the line is drawn between the three verdicts.
 *
 * @param accept least conformance probability that is conforming
 * @param reject greatest conformance probability that is nonconforming
 * @param guard zones that decide instead of the two probabilities, if the job asks for them
 */
public record DecisionRule(double accept, double reject, Optional<GuardBand> guard) {
  /** Five in a hundred either way. */
  public static final DecisionRule DEFAULT = new DecisionRule(0.95, 0.05);

  /**
   * @throws IllegalArgumentException unless 0 &lt; reject &lt; accept &lt; 1
   */
  public DecisionRule {
    if (!(reject > 0 && reject < accept && accept < 1)) {
      throw new IllegalArgumentException(
          "The decision rule accepts at "
              + accept
              + " and rejects at "
              + reject
              + "; expected 0 < reject < accept < 1.");
    }
  }

  /** A rule by the two probabilities alone. */
  public DecisionRule(double accept, double reject) {
    this(accept, reject, Optional.empty());
  }

  /** The same rule, deciding by zones. */
  public DecisionRule with(GuardBand band) {
    return new DecisionRule(accept, reject, Optional.of(band));
  }

  /** The verdict by the two probabilities. */
  public Verdict verdict(double conformanceProbability) {
    if (conformanceProbability >= accept) {
      return Verdict.CONFORMING;
    }
    return conformanceProbability <= reject ? Verdict.NONCONFORMING : Verdict.UNDECIDED;
  }
}
