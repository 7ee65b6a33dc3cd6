package datumpeg.analysis.check;

import datumpeg.analysis.conform.Decision;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Origin;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns a deviation with its uncertainty into an outcome by the job's limits and decision rule. */
public final class OutcomeMaker {
  private final Job job;
  private final Decision decision;

  public OutcomeMaker(Job job) {
    this.job = job;
    this.decision = new Decision(job.decision());
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

  /** A deviation in metres against limits that are not the tolerance of its check. */
  public Outcome within(
      String check,
      String target,
      OptionalDouble nominalMetres,
      Estimate measured,
      Optional<Limits> limits,
      Evidence evidence) {
    Estimate deviation = measured.shifted(-nominalMetres.orElse(0));
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
   * @param difference the least certain one of two of them; its uncertainty counts, root 2 of what
   *     {@link datumpeg.analysis.conform.Conformance#probabilityOfSpread} asks of one value
   */
  public Outcome spread(
      String check,
      String target,
      double spreadMetres,
      Estimate difference,
      int n,
      double sizeMetres,
      Evidence evidence,
      String aside) {
    Estimate one = doubted(difference, evidence, check, target).scaled(1 / Math.sqrt(2));
    double u = one.standardUncertainty();
    double coverage = decision.spreadCoverage(n);
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.unsigned(sizeMetres));
    return outcome(
        check,
        target,
        OptionalDouble.of(0),
        spreadMetres,
        new Estimate(spreadMetres, u, one.budget()),
        coverage,
        limits,
        limits.map(within -> decision.spread(spreadMetres, u, n, within)),
        evidence,
        aside);
  }

  /**
   * The greatest of n absolute values, decided through the greatest of their errors.
   *
   * @param leastCertain one of them; its uncertainty counts, as {@link
   *     datumpeg.analysis.conform.Conformance#probabilityOfMaximum} asks
   */
  public Outcome maximum(
      String check,
      String target,
      double maximumMetres,
      Estimate leastCertain,
      int n,
      double sizeMetres,
      Evidence evidence,
      String aside) {
    Estimate one = doubted(leastCertain, evidence, check, target);
    Optional<Limits> limits = job.tolerance(check).map(tolerance -> tolerance.unsigned(sizeMetres));
    return outcome(
        check,
        target,
        OptionalDouble.of(0),
        maximumMetres,
        new Estimate(maximumMetres, one.standardUncertainty(), one.budget()),
        Decision.maximumCoverage(n),
        limits,
        limits.map(within -> decision.maximum(maximumMetres, one.standardUncertainty(), n, within)),
        evidence,
        aside);
  }

  /** A flatness or levelness number against the least one the project asks for, if it does. */
  public Outcome floorNumber(
      String check,
      String target,
      OptionalDouble least,
      Estimate number,
      String source,
      Evidence evidence,
      String aside) {
    Estimate deviation = number.shifted(-least.orElse(0));
    Optional<Limits> limits =
        least.isPresent()
            ? Optional.of(new Limits(OptionalDouble.of(0), OptionalDouble.empty(), source))
            : Optional.empty();
    return decided(check, target, least, number.value(), deviation, limits, evidence, aside)
        .withUnit(OutcomeUnit.F_NUMBER);
  }

  private Outcome decided(
      String check,
      String target,
      OptionalDouble nominal,
      double measured,
      Estimate undoubted,
      Optional<Limits> limits,
      Evidence evidence,
      String aside) {
    Estimate deviation = doubted(undoubted, evidence, check, target);
    return outcome(
        check,
        target,
        nominal,
        measured,
        deviation,
        deviation.coverageFactor(),
        limits,
        limits.map(within -> decision.value(deviation, within)),
        evidence,
        aside);
  }

  /** Known no better than what readings in doubt may have moved it by. */
  private static Estimate doubted(
      Estimate estimate, Evidence evidence, String check, String target) {
    double effect = evidence.effects().of(check, target);
    return effect > 0 ? estimate.widened(effect, Origin.OTHER) : estimate;
  }

  private static Outcome outcome(
      String check,
      String target,
      OptionalDouble nominal,
      double measured,
      Estimate deviation,
      double coverage,
      Optional<Limits> limits,
      Optional<Decision.Decided> decided,
      Evidence evidence,
      String aside) {
    return new Outcome(
        check,
        target,
        evidence.round(),
        OutcomeUnit.MILLIMETRE,
        nominal,
        measured,
        deviation.value(),
        coverage * deviation.standardUncertainty(),
        coverage,
        deviation.budget(),
        limits,
        decided.map(found -> OptionalDouble.of(found.probability())).orElse(OptionalDouble.empty()),
        decided.map(Decision.Decided::verdict),
        evidence.stale(),
        "",
        aside,
        evidence.readingIds());
  }
}
