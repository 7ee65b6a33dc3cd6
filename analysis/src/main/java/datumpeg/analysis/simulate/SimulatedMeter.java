package datumpeg.analysis.simulate;

import datumpeg.analysis.measuring.MeterAccuracy;

/**
 * One instrument in one session, with the errors it brings along; metres, or radians for a tilt
 * meter.
 *
 * @param repeatability standard deviation from reading to reading
 * @param resolution the display's step; 0 = shows every digit
 * @param commonError the error every reading of the session shares: of a tilt meter its zero error,
 *     which has the same sign on both faces
 * @param scaleErrorPerMetre added for each metre of a distance
 * @param plane what a level takes for level
 */
public record SimulatedMeter(
    double repeatability,
    double resolution,
    double commonError,
    double scaleErrorPerMetre,
    LevelPlane plane) {
  /** Reads the truth. */
  public static final SimulatedMeter PERFECT = new SimulatedMeter(0, 0, 0, 0, LevelPlane.TRUE);

  /**
   * @throws IllegalArgumentException for a negative repeatability or resolution, or a part that is
   *     not finite
   */
  public SimulatedMeter {
    boolean finite = Double.isFinite(repeatability + resolution + commonError + scaleErrorPerMetre);
    if (!finite || repeatability < 0 || resolution < 0) {
      throw new IllegalArgumentException(
          "A simulated meter needs finite errors, repeatability and resolution of 0 or more; found"
              + " repeatability "
              + repeatability
              + ", resolution "
              + resolution
              + ", common error "
              + commonError
              + ", scale error "
              + scaleErrorPerMetre
              + " a metre.");
    }
  }

  /** A distance or tilt meter of this accuracy, its common errors drawn for one session. */
  public static SimulatedMeter draw(MeterAccuracy accuracy, NormalDraws draws) {
    return new SimulatedMeter(
        accuracy.repeatability(),
        accuracy.resolution(),
        draws.next(accuracy.common()),
        draws.next(accuracy.perMetre()),
        LevelPlane.TRUE);
  }

  /**
   * A level of this accuracy in one set-up: its plane stands at a height and is tilted both ways by
   * what {@link MeterAccuracy#perMetre()} allows.
   */
  public static SimulatedMeter drawLevel(
      MeterAccuracy accuracy, double planeHeightMetres, NormalDraws draws) {
    return new SimulatedMeter(
        accuracy.repeatability(),
        accuracy.resolution(),
        draws.next(accuracy.common()),
        0,
        new LevelPlane(
            planeHeightMetres, draws.next(accuracy.perMetre()), draws.next(accuracy.perMetre())));
  }

  /** The same meter with a common error that is known. */
  public SimulatedMeter withCommonError(double error) {
    return new SimulatedMeter(repeatability, resolution, error, scaleErrorPerMetre, plane);
  }

  /** What it shows for a length, height or offset. Always uses up one draw. */
  double show(double trueValue, NormalDraws draws) {
    return rounded(trueValue + commonError + draws.next(repeatability));
  }

  /** What it shows for a distance. */
  double showDistance(double trueMetres, NormalDraws draws) {
    return show(trueMetres * (1 + scaleErrorPerMetre), draws);
  }

  /** What it shows for a tilt: turned end for end, on face 2, it sees the tilt reversed. */
  double showTilt(double trueRadians, int face, NormalDraws draws) {
    return show(face == 2 ? -trueRadians : trueRadians, draws);
  }

  private double rounded(double value) {
    return resolution == 0 ? value : Math.rint(value / resolution) * resolution;
  }
}
