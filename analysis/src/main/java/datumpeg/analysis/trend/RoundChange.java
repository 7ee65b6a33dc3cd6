package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.uncertainty.Estimate;

/**
 * What changed between two outcomes of one target, such as two rounds or two stages.
 *
 * <p>U(d₂ − d₁) = √(U₁² + U₂²), both taken as independent (JCGM 100:2008, 5.1.2). An error that
 * both share, such as one meter's, cancels in the change, so that the figure errs on the cautious
 * side. Both must be in one unit, which is the caller's to see to.
 */
public record RoundChange(Outcome before, Outcome after) {

  /** After − before, in the outcomes' SI unit. */
  public double change() {
    return after.deviation() - before.deviation();
  }

  /** Expanded uncertainty of the change. */
  public double expandedUncertainty() {
    return Estimate.combine(before.expandedUncertainty(), after.expandedUncertainty());
  }

  /** Whether it changed by more than the uncertainty of the change. */
  public boolean moved() {
    return Math.abs(change()) > expandedUncertainty();
  }
}
