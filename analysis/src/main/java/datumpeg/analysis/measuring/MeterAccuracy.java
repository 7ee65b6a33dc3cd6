package datumpeg.analysis.measuring;

/**
 * How accurate one reading of a meter is; standard uncertainties in metres, or radians for a tilt
 * meter.
 *
 * <p>Independent variance = repeatability² + resolution²/12 (a rectangular distribution: JCGM
 * 100:2008, 4.3.7) + what the points' own definition adds. Common variance = common² + (per metre ·
 * L)², one unknown a meter and session: repeats do not shrink it.
 *
 * @param repeatability standard uncertainty of one reading, independent from reading to reading
 * @param common standard uncertainty of the error that all readings of a session share
 * @param perMetre standard uncertainty that grows with the length and is shared by a session
 * @param resolution the display's step
 */
public record MeterAccuracy(
    double repeatability, double common, double perMetre, double resolution) {

  /**
   * @throws IllegalArgumentException for a negative or non-finite part
   */
  public MeterAccuracy {
    for (double part : new double[] {repeatability, common, perMetre, resolution}) {
      if (!(part >= 0) || !Double.isFinite(part)) {
        throw new IllegalArgumentException(
            "A meter's accuracy needs finite parts of 0 or more, found " + part + ".");
      }
    }
  }

  /** An expanded uncertainty alone, split into equal independent and common variances. */
  public static MeterAccuracy ofExpanded(
      double expandedUncertainty, double coverage, double resolution) {
    double each = expandedUncertainty / coverage / Math.sqrt(2);
    return new MeterAccuracy(each, each, 0, resolution);
  }

  /** Variance of the part that is independent from reading to reading, points apart. */
  public double independentVariance() {
    return repeatability * repeatability + resolution * resolution / 12;
  }
}
