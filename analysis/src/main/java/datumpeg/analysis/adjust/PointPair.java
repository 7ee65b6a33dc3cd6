package datumpeg.analysis.adjust;

/** Two points, in the order the caller listed them. */
public record PointPair(String first, String second) {
  public PointPair {
    if (first.equals(second)) {
      throw new IllegalArgumentException(
          "pair of points: both are " + first + ", expected two points");
    }
  }

  boolean joins(String one, String other) {
    return (first.equals(one) && second.equals(other))
        || (first.equals(other) && second.equals(one));
  }
}
