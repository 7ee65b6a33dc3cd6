package datumpeg.bridge.derived;

import datumpeg.analysis.signoff.HoldPoint;

/**
 * How many outcomes of a stage stand how.
 *
 * @param stage the stage's id
 * @param measured whether it has readings
 * @param holdPoint how its hold point stands
 * @param stale outcomes that stand on something moved since; counted here alone
 * @param noLimit values for which the job gives no limit
 * @param notMeasured targets of its checks that were not measured
 */
public record StageCount(
    String stage,
    boolean measured,
    HoldPoint.State holdPoint,
    int conforming,
    int undecided,
    int nonconforming,
    int stale,
    int noLimit,
    int notMeasured) {}
