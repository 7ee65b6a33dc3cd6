package datumpeg.analysis.conform;

import datumpeg.analysis.uncertainty.Budget;
import datumpeg.analysis.uncertainty.Origin;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One check of one target: value, uncertainty, limits, verdict and remedy. All numbers in the SI
 * unit that {@code unit} is shown from (metres for lengths).
 *
 * @param check the check's name, such as slab-square
 * @param target what was checked, such as A1 or A1-A2/base
 * @param round the latest round among the readings used
 * @param nominal design value; empty where the plan gives none
 * @param measured the value found
 * @param deviation measured − nominal, signed, or the value itself where there is no nominal
 * @param expandedUncertainty of the deviation, coverage · standard uncertainty
 * @param coverage the coverage factor
 * @param budget the variance of the deviation by its origins, the square of the standard
 *     uncertainty
 * @param limits empty when the job gives none
 * @param probability conformance probability; present exactly when there are limits
 * @param verdict present exactly when there are limits
 * @param stale whether something it stands on was moved since
 * @param remedy what to do, in words and millimetres; empty when there is nothing to do
 * @param aside a value told beside this one, empty if none
 * @param readingIds what it was found from
 */
public record Outcome(
    String check,
    String target,
    int round,
    OutcomeUnit unit,
    OptionalDouble nominal,
    double measured,
    double deviation,
    double expandedUncertainty,
    double coverage,
    Budget budget,
    Optional<Limits> limits,
    OptionalDouble probability,
    Optional<Verdict> verdict,
    boolean stale,
    String remedy,
    String aside,
    List<String> readingIds) {

  /**
   * @throws IllegalArgumentException for non-finite numbers, or a verdict without limits
   */
  public Outcome {
    readingIds = List.copyOf(readingIds);
    for (double number : new double[] {measured, deviation, expandedUncertainty, coverage}) {
      if (!Double.isFinite(number)) {
        throw new IllegalArgumentException(
            "The outcome of "
                + check
                + " "
                + target
                + " has a number that is not finite: "
                + number);
      }
    }
    if (limits.isPresent() != verdict.isPresent()
        || limits.isPresent() != probability.isPresent()) {
      throw new IllegalArgumentException(
          "The outcome of "
              + check
              + " "
              + target
              + " needs probability and verdict exactly when it has limits.");
    }
  }

  /** An outcome of whose uncertainty no more is known than its size. */
  public Outcome(
      String check,
      String target,
      int round,
      OutcomeUnit unit,
      OptionalDouble nominal,
      double measured,
      double deviation,
      double expandedUncertainty,
      double coverage,
      Optional<Limits> limits,
      OptionalDouble probability,
      Optional<Verdict> verdict,
      boolean stale,
      String remedy,
      String aside,
      List<String> readingIds) {
    this(
        check,
        target,
        round,
        unit,
        nominal,
        measured,
        deviation,
        expandedUncertainty,
        coverage,
        Budget.of(Origin.OTHER, expandedUncertainty / coverage),
        limits,
        probability,
        verdict,
        stale,
        remedy,
        aside,
        readingIds);
  }

  public double standardUncertainty() {
    return expandedUncertainty / coverage;
  }

  public boolean is(Verdict wanted) {
    return verdict.isPresent() && verdict.get() == wanted;
  }

  /** The same outcome with a remedy. */
  public Outcome withRemedy(String words) {
    return with(unit, words, aside);
  }

  /** The same outcome, its numbers meant in another unit. */
  public Outcome withUnit(OutcomeUnit other) {
    return with(other, remedy, aside);
  }

  /** The same outcome with something told beside it. */
  public Outcome withAside(String words) {
    return with(unit, remedy, words);
  }

  /** The same outcome with more told beside it; nothing more for an empty text. */
  public Outcome withFurtherAside(String words) {
    return words.isEmpty() ? this : withAside(aside.isEmpty() ? words : aside + "; " + words);
  }

  private Outcome with(OutcomeUnit otherUnit, String otherRemedy, String otherAside) {
    return new Outcome(
        check,
        target,
        round,
        otherUnit,
        nominal,
        measured,
        deviation,
        expandedUncertainty,
        coverage,
        budget,
        limits,
        probability,
        verdict,
        stale,
        otherRemedy,
        otherAside,
        readingIds);
  }
}
