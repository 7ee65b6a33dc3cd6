package datumpeg.analysis.adjust;

import java.util.OptionalDouble;

/**
 * What the adjustment says of one observation. For observations that are independent of each other
 * the formulas are those of W. Baarda, A testing procedure for use in geodetic networks (1968); for
 * correlated ones their generalisation in P. J. G. Teunissen, Testing theory (2000). Both recalled,
 * not looked up; the tests check them against a worked case and against simulation. With P the
 * inverse of the observations' covariance Q, v the residuals and Qv their covariance:
 *
 * @param observation as observed, untouched
 * @param adjusted observed + residual
 * @param residual v = adjusted - observed
 * @param residualStandardUncertainty root of Qv's diagonal
 * @param redundancy diagonal of Qv P: the share of a slip in this observation that its own residual
 *     shows, with the sign changed. In [0, 1] for independent observations, their sum over all
 *     observations is the degrees of freedom; between correlated observations single values may lie
 *     outside
 * @param standardizedResidual v / sd(v); absent if no other observation checks this one
 * @param slipStatistic estimated slip over its standard uncertainty, -(P v) / sqrt(P Qv P):
 *     standard normal if nothing slipped; for independent observations -(v / sd(v)); absent if
 *     unchecked
 * @param estimatedSlip observed - true, if this observation alone slipped: -(P v) / (P Qv P);
 *     absent if unchecked
 * @param smallestDetectableSlip size found with probability 80 % by a test that cries wolf in 5 %:
 *     2.8016 / sqrt(P Qv P), which for independent observations is 2.8016 u / sqrt(redundancy);
 *     absent if unchecked
 */
public record AdjustedObservation(
    Observation observation,
    double adjusted,
    double residual,
    double residualStandardUncertainty,
    double redundancy,
    OptionalDouble standardizedResidual,
    OptionalDouble slipStatistic,
    OptionalDouble estimatedSlip,
    OptionalDouble smallestDetectableSlip) {

  /** Whether other observations check this one, so that a slip in it can show. */
  public boolean checked() {
    return slipStatistic.isPresent();
  }
}
