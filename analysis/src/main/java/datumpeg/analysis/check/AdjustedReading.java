package datumpeg.analysis.check;

import java.util.OptionalDouble;

/**
 * One reading as observed, and as the adjustment of its network has it. The observed value is never
 * altered. Metres.
 *
 * @param observedMetres the reading; between frames brought to their centre lines, a staff reading
 *     with its sign turned
 * @param residualMetres adjusted − observed
 * @param redundancy how much of a slip in it its own residual would show, 0 to 1
 * @param standardizedResidual residual over its standard uncertainty; empty if nothing checks it
 * @param smallestDetectableSlipMetres found with 80 % at 5 %; empty if nothing checks it
 */
public record AdjustedReading(
    String readingId,
    String target,
    double observedMetres,
    double adjustedMetres,
    double residualMetres,
    double redundancy,
    OptionalDouble standardizedResidual,
    OptionalDouble smallestDetectableSlipMetres) {}
