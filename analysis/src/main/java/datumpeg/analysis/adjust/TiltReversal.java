package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;

/**
 * Tilt and zero error from one reading on each face: tilt = (r1 - r2) / 2, zero error = (r1 + r2) /
 * 2.
 *
 * @param tilt free of the zero error
 * @param zeroError of the meter
 */
public record TiltReversal(Estimate tilt, Estimate zeroError) {
  /** From two readings in one unit, their uncertainties being independent of each other. */
  public static TiltReversal of(Estimate faceOne, Estimate faceTwo) {
    return new TiltReversal(faceOne.minus(faceTwo).scaled(0.5), faceOne.plus(faceTwo).scaled(0.5));
  }
}
