package datumpeg.analysis.adjust;

/**
 * One reading of a tilt: face 1 reads tilt + zero error, face 2 reads -tilt + zero error.
 *
 * @param observation in radians; the meter's zero error is one of its common parts, with the same
 *     effect on both faces
 */
public record TiltReading(String target, TiltFace face, Observation observation) {}
