package datumpeg.analysis.check;

import datumpeg.analysis.conform.Conformance;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.stat.StudentizedRange;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns a deviation with its uncertainty into an outcome by the job's limits and decision rule. */
public final class OutcomeMaker {
  private static final double SPREAD_CONFIDENCE = 0.95;

  private final Job job;

  public OutcomeMaker(Job job) {
    this.job = job;
  }

  /**
   * A signed deviation from the plan, in metres.
   *
   * @param sizeMetres what the limit is a function of: the nominal length, or the column height
   */
  public Outcome signed(
      String check,
      String target,
      OptionalDouble nominalMetres,
      Estimate measured,
      double sizeMetres,
      Evidence evidence) {
    Estimate deviation = measured.shifted(-nominalMetres.orElse(0));
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.signed(sizeMetres));
    return decided(check, target, nominalMetres, measured.value(), deviation, limits, evidence, "");
  }

  /** As {@link #signed}, without a nominal and with a value told beside it. */
  public Outcome signedWithAside(
      String check,
      String target,
      Estimate deviation,
      double sizeMetres,
      Evidence evidence,
      String aside) {
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.signed(sizeMetres));
    return decided(
        check, target, OptionalDouble.of(0), deviation.value(), deviation, limits, evidence, aside);
  }

  /** A difference printed without its sign and decided with it. */
  public Outcome absoluteDifference(
      String check, String target, Estimate difference, double sizeMetres, Evidence evidence) {
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.signed(sizeMetres));
    return decided(
        check,
        target,
        OptionalDouble.of(0),
        Math.abs(difference.value()),
        difference,
        limits,
        evidence,
        "");
  }

  /**
   * A spread of n values, decided through the range of their errors.
   *
   * @param standardUncertaintyMetres of one of them, as {@link Conformance#probabilityOfSpread}
   *     asks
   */
  public Outcome spread(
      String check,
      String target,
      double spreadMetres,
      double standardUncertaintyMetres,
      int n,
      double sizeMetres,
      Evidence evidence,
      String aside) {
    double coverage = StudentizedRange.quantile(SPREAD_CONFIDENCE, n);
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.unsigned(sizeMetres));
    OptionalDouble probability =
        limits.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                Conformance.probabilityOfSpread(
                    spreadMetres,
                    standardUncertaintyMetres,
                    n,
                    limits.get().upper().orElse(Double.POSITIVE_INFINITY)));
    return new Outcome(
        check,
        target,
        evidence.round(),
        OutcomeUnit.MILLIMETRE,
        OptionalDouble.of(0),
        spreadMetres,
        spreadMetres,
        coverage * standardUncertaintyMetres,
        coverage,
        limits,
        probability,
        limits.map(any -> job.decision().verdict(probability.orElse(0))),
        evidence.stale(),
        "",
        aside,
        evidence.readingIds());
  }

  private Outcome decided(
      String check,
      String target,
      OptionalDouble nominal,
      double measured,
      Estimate deviation,
      Optional<Limits> limits,
      Evidence evidence,
      String aside) {
    OptionalDouble probability =
        limits
            .map(within -> OptionalDouble.of(Conformance.probabilityWithin(deviation, within)))
            .orElse(OptionalDouble.empty());
    return new Outcome(
        check,
        target,
        evidence.round(),
        OutcomeUnit.MILLIMETRE,
        nominal,
        measured,
        deviation.value(),
        deviation.expanded(),
        Estimate.COVERAGE_FACTOR,
        limits,
        probability,
        limits.map(any -> job.decision().verdict(probability.orElse(0))),
        evidence.stale(),
        "",
        aside,
        evidence.readingIds());
  }
}
