package datumpeg.analysis.adjust;

/**
 * A straight distance between two points in one plane.
 *
 * @param observation in metres, above 0
 */
public record MeasuredDistance(String from, String to, Observation observation) {
  public MeasuredDistance {
    if (from.equals(to)) {
      throw new IllegalArgumentException(
          "distance " + observation.id() + ": both ends are " + from + ", expected two points");
    }
    if (observation.observed() <= 0) {
      throw new IllegalArgumentException(
          "distance "
              + observation.id()
              + " from "
              + from
              + " to "
              + to
              + " is "
              + observation.observed()
              + " m, expected above 0");
    }
  }
}
