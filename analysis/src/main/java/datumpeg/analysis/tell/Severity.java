package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;

/** How much an outcome asks for something to be done. */
public final class Severity {
  private Severity() {}

  /** Whether it is out of its limits, or not told to be inside. */
  public static boolean isOpen(Outcome outcome) {
    return outcome.is(Verdict.NONCONFORMING) || outcome.is(Verdict.UNDECIDED);
  }

  /** How far a deviation is beyond its limit, as a multiple of the limit. */
  public static double of(Outcome outcome) {
    Limits limits = outcome.limits().orElseThrow();
    double limit =
        outcome.deviation() < 0
            ? -limits.lower().orElse(Double.NEGATIVE_INFINITY)
            : limits.upper().orElse(Double.POSITIVE_INFINITY);
    return Math.abs(outcome.deviation()) / Math.max(limit, 1e-6);
  }
}
