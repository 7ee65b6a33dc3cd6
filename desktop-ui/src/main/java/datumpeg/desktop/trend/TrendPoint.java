package datumpeg.desktop.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Standing;
import java.util.OptionalDouble;

/**
 * One outcome in a trend, in the unit it is shown in.
 *
 * @param label the stage, and the round where there are several
 * @param written the deviation with its uncertainty
 * @param lower least permitted deviation, if there is one
 * @param upper greatest permitted deviation, if there is one
 */
record TrendPoint(
    String label,
    double deviation,
    double uncertainty,
    String written,
    OptionalDouble lower,
    OptionalDouble upper,
    Standing standing) {

  static TrendPoint of(String label, Outcome outcome, Figures figures) {
    return new TrendPoint(
        label,
        figures.shown(outcome.unit(), outcome.deviation()),
        figures.shown(outcome.unit(), outcome.expandedUncertainty()),
        figures.deviationWithUncertainty(outcome),
        bound(outcome, figures, true),
        bound(outcome, figures, false),
        Standing.of(outcome));
  }

  private static OptionalDouble bound(Outcome outcome, Figures figures, boolean lower) {
    OptionalDouble si =
        outcome
            .limits()
            .map(limits -> lower ? limits.lower() : limits.upper())
            .orElse(OptionalDouble.empty());
    return si.isPresent() ? OptionalDouble.of(figures.shown(outcome.unit(), si.getAsDouble())) : si;
  }
}
