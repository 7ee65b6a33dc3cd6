package datumpeg.analysis.trend;

/**
 * One rule by which a run of points speaks against mere chance.
 *
 * @param kind what is looked for
 * @param hits how many points must show it
 * @param window among how many that follow each other
 * @param sigmas the distance from the centre line in standard deviations, where the kind has one
 */
public record RunRule(Kind kind, int hits, int window, double sigmas) {

  /** What a rule looks for. */
  public enum Kind {
    /** Points further out than so many standard deviations, all on one side. */
    BEYOND_ON_ONE_SIDE,
    /** Points on one side of the centre line. */
    ONE_SIDE,
    /** Each point above the one before, or each below; equal ones break it. */
    RISING_OR_FALLING,
    /** Up, down, up, down. */
    ALTERNATING,
    /** Points nearer to the centre line than so many standard deviations. */
    NEAR_THE_CENTRE,
    /** Points further out than so many standard deviations, on either side. */
    BEYOND_ON_EITHER_SIDE
  }

  static RunRule beyond(int hits, int window, double sigmas) {
    return new RunRule(Kind.BEYOND_ON_ONE_SIDE, hits, window, sigmas);
  }

  static RunRule inARow(Kind kind, int count) {
    return new RunRule(kind, count, count, 0);
  }

  /** What it means for the points named before, on the side given. */
  String words(int side) {
    String where = side > 0 ? "above" : "below";
    return switch (kind) {
      case BEYOND_ON_ONE_SIDE ->
          window == 1
              ? where + " the control limit"
              : hits
                  + " of "
                  + window
                  + " more than "
                  + (int) sigmas
                  + (sigmas == 1 ? " standard deviation " : " standard deviations ")
                  + where
                  + " the centre line";
      case ONE_SIDE -> hits + " or more in a row " + where + " the centre line";
      case RISING_OR_FALLING ->
          hits + " or more in a row " + (side > 0 ? "rising" : "falling") + " steadily";
      case ALTERNATING -> hits + " or more in a row going up and down in turn";
      case NEAR_THE_CENTRE ->
          hits + " or more in a row within 1 standard deviation of the centre line";
      case BEYOND_ON_EITHER_SIDE ->
          hits + " or more in a row more than 1 standard deviation from the centre line";
    };
  }
}
